import type { Direction } from '@draughtbook/shared-calc'
import { useId } from 'preact/hooks'
import { drawnOnChange } from '../../drawn-on-change.js'
import {
  isBlank,
  pastedRows,
  rowsOf,
  type TypedReading,
  type TypedRun,
  whyNotPasted,
  withoutReading,
  withReading,
} from './typed-run.js'

interface TableProps {
  run: TypedRun
  direction: Direction
  faults: Readonly<Record<string, string>>
  /** Names of the device's ranges. */
  ranges: readonly string[]
  onChange: (edit: (run: TypedRun) => TypedRun, what?: string) => void
  /** Says why something was not taken. */
  onRefused: (words: string) => void
}

/**
 * Readings as typed. Enter goes from the pressure to the flow and on to the next row; arrows go up and down. Cells copied in a
 * spreadsheet are pasted from the cursor on.
 */
export function ReadingTable({ run, direction, faults, ranges, onChange, onRefused }: TableProps) {
  const device = run.second === 'devicePressure'
  const paste = (event: ClipboardEvent): void => {
    const at = placeOf(event.target)
    const rows = pastedRows(event.clipboardData?.getData('text/plain') ?? '')
    if (!at || !rows) return
    event.preventDefault()
    const columns = (device ? COLUMNS : COLUMNS.slice(0, 2)).slice(COLUMNS.indexOf(at.column))
    const refused = whyNotPasted(rows, columns.length)
    if (refused !== undefined) onRefused(refused)
    else onChange((before) => withCells(before, at.row, columns, rows))
  }
  return (
    <table class="reading-table">
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">Reading</span>
          </th>
          <th scope="col">
            Pressure <span class="unit">{run.pressureUnit}</span>
          </th>
          <th scope="col">
            {device ? 'Device' : 'Air flow'} <span class="unit">{run.secondUnit}</span>
          </th>
          {device ? <th scope="col">Range</th> : null}
          <th scope="col">
            <span class="unseen">Remove</span>
          </th>
        </tr>
      </thead>
      <tbody onKeyDown={moveOn} onPaste={paste}>
        {rowsOf(run).map((reading, row) => (
          <Row
            // Rows have no name but their place.
            key={row}
            {...{ direction, device, ranges, onChange, reading, row }}
            faults={faultsOf(faults, `${direction}.readings[${row}]`)}
          />
        ))}
      </tbody>
    </table>
  )
}

const faultsOf = (faults: TableProps['faults'], at: string): RowProps['faults'] => {
  const [pressure, second] = [faults[`${at}.pressure`], faults[`${at}.second`]]
  return { ...(pressure !== undefined && { pressure }), ...(second !== undefined && { second }) }
}

interface RowProps extends Pick<TableProps, 'direction' | 'ranges' | 'onChange'> {
  reading: TypedReading
  row: number
  /** The device shows its own pressure, not a flow. */
  device: boolean
  /** What is wrong with either value. */
  faults: Readonly<Partial<Record<'pressure' | 'second', string>>>
}

const Row = drawnOnChange(WholeRow, ({ reading, row, direction, device, ranges, faults }) => [
  reading,
  row,
  direction,
  device,
  ranges.join(),
  faults.pressure,
  faults.second,
])

function WholeRow({ direction, device, faults, ranges, onChange, reading, row }: RowProps) {
  const id = useId()
  const wrong = (['pressure', 'second'] as const).flatMap((column) => {
    const words = faults[column]
    return words === undefined ? [] : [{ column, words }]
  })
  const put = (change: Partial<TypedReading>, what: string): void =>
    onChange((before) => withReading(before, row, { ...carried(before, row), ...change }), `${row}.${what}`)
  const keep = (text: string): void => put({ kept: [...(reading.kept ?? []), text.trim()] }, 'kept')
  const minus = direction === 'depressurisation' && !/^\s*[-−–+]/.test(reading.pressure)
  return (
    <>
      <tr data-row={row}>
        <th scope="row">{row + 1}</th>
        <td class="signed">
          {minus ? (
            <span class="minus" aria-hidden="true">
              −
            </span>
          ) : null}
          <Cell
            label={`Pressure, reading ${row + 1}`}
            column="pressure"
            text={reading.pressure}
            wrong={faults.pressure !== undefined}
            described={id}
            onText={(pressure) => put({ pressure }, 'pressure')}
          />
        </td>
        <td>
          <Cell
            label={`${device ? 'Device pressure' : 'Air flow'}, reading ${row + 1}`}
            column="second"
            text={reading.second}
            wrong={faults.second !== undefined}
            described={id}
            onText={(second) => put({ second }, 'second')}
          />
        </td>
        {device ? (
          <td>
            {ranges.length > 0 ? (
              <select
                aria-label={`Range, reading ${row + 1}`}
                value={reading.range ?? ''}
                onChange={({ currentTarget }) => put({ range: currentTarget.value }, 'range')}
              >
                <option value="">–</option>
                {ranges.map((label) => (
                  <option key={label}>{label}</option>
                ))}
              </select>
            ) : (
              <input
                aria-label={`Range, reading ${row + 1}`}
                data-column="range"
                value={reading.range ?? ''}
                onInput={({ currentTarget }) => put({ range: currentTarget.value }, 'range')}
              />
            )}
          </td>
        ) : null}
        <td>
          {isBlank(reading) ? null : (
            <button
              type="button"
              class="icon"
              aria-label={`Remove reading ${row + 1}`}
              title={reading.at ? `entered at ${reading.at}` : undefined}
              onClick={() => onChange((before) => withoutReading(before, row))}
            >
              ×
            </button>
          )}
        </td>
      </tr>
      {wrong.length > 0 ? (
        <tr class="fault-row" id={id}>
          <td />
          <td colSpan={device ? 4 : 3}>
            {wrong.map(({ column, words }) => (
              <p class="fault" key={column}>
                {words}{' '}
                {words.includes('unusually') ? (
                  <button type="button" onClick={() => keep(reading[column])}>
                    Keep {reading[column].trim()}
                  </button>
                ) : null}
              </p>
            ))}
          </td>
        </tr>
      ) : null}
    </>
  )
}

interface CellProps {
  label: string
  column: 'pressure' | 'second'
  text: string
  wrong: boolean
  described: string
  onText: (text: string) => void
}

function Cell({ label, column, text, wrong, described, onText }: CellProps) {
  return (
    <input
      aria-label={label}
      aria-invalid={wrong}
      aria-describedby={wrong ? described : undefined}
      data-column={column}
      inputMode="decimal"
      autoComplete="off"
      spellcheck={false}
      enterKeyHint="next"
      value={text}
      onInput={(event) => onText(event.currentTarget.value)}
    />
  )
}

/** A row begun takes the time, and the range of the row before it. */
function carried({ readings }: TypedRun, row: number): Partial<TypedReading> {
  const own = readings[row]
  if (own && !isBlank(own)) return {}
  const now = new Date()
  const at = `${String(now.getHours()).padStart(2, '0')}:${String(now.getMinutes()).padStart(2, '0')}`
  const range = own?.range ?? readings[row - 1]?.range
  return { at, ...(range !== undefined && { range }) }
}

/** The run with pasted cells in it, from a row on. */
const withCells = (
  run: TypedRun,
  row: number,
  columns: readonly Column[],
  cells: readonly (readonly string[])[],
): TypedRun =>
  cells.reduce((before, values, down) => {
    const given = columns.flatMap((column, at) => (values[at] === undefined ? [] : [[column, values[at]]]))
    return withReading(before, row + down, { ...carried(before, row + down), ...Object.fromEntries(given) })
  }, run)

const COLUMNS = ['pressure', 'second', 'range'] as const
type Column = (typeof COLUMNS)[number]

/** Row and column of an input of the table. */
function placeOf(input: EventTarget | null): { row: number; column: Column } | undefined {
  if (!(input instanceof HTMLInputElement)) return undefined
  const column = COLUMNS.find((one) => one === input.dataset.column)
  return column && { row: Number(input.closest<HTMLElement>('[data-row]')?.dataset.row), column }
}

const STEPS: Record<string, number> = { ArrowDown: 1, ArrowUp: -1 }

function moveOn(event: KeyboardEvent & { currentTarget: HTMLElement }): void {
  const at = placeOf(event.target)
  if (!at) return
  const { row, column } = at
  const step = STEPS[event.key]
  const [toRow, toColumn] =
    step !== undefined
      ? [row + step, column]
      : event.key !== 'Enter'
        ? []
        : column === 'pressure'
          ? [row, 'second']
          : [row + 1, 'pressure']
  if (toRow === undefined) return
  event.preventDefault()
  const next = event.currentTarget.querySelector<HTMLInputElement>(
    `[data-row="${toRow}"] [data-column="${toColumn}"]`,
  )
  next?.focus()
  next?.select()
}
