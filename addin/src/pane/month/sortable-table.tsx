import { visible } from '@draughtbook/shared-calc'
import { useMemo, useState } from 'preact/hooks'

export interface TableColumn<Row> {
  readonly head: string
  /** Printed under the head, as people read it. */
  readonly unit?: string
  /** Its texts are sentences: they take several lines instead of widening the table. */
  readonly sentences?: boolean
  readonly value: (row: Row) => string | number | undefined
  /** How it is shown, where that is not the value itself. */
  readonly text?: (row: Row) => string
}

interface SortableTableProps<Row> {
  caption: string
  rows: readonly Row[]
  columns: readonly TableColumn<Row>[]
  /** Column whose words can be chosen from. */
  choose: TableColumn<Row>
  rowClass?: (row: Row) => string
}

/** Rows drawn at a time: a browser lays out a few hundred at once without a pause. */
const STEP = 300

/** A table that sorts by any column and filters by words and by one column's values; all by keyboard. */
export function SortableTable<Row>({ caption, rows, columns, choose, rowClass }: SortableTableProps<Row>) {
  const [words, setWords] = useState('')
  const [choice, setChoice] = useState('')
  const [sorted, setSorted] = useState<{ by: number; down: boolean }>()
  const [most, setMost] = useState(STEP)
  const choices = useMemo(
    () => [...new Set(rows.map((row) => String(choose.value(row) ?? '')))].sort(),
    [rows, choose],
  )
  const shown = useMemo(() => {
    const wanted = words.trim().toLowerCase()
    const found = rows.filter(
      (row) =>
        (choice === '' || String(choose.value(row) ?? '') === choice) &&
        (wanted === '' || columns.some((column) => textOf(column, row).toLowerCase().includes(wanted))),
    )
    const column = sorted && columns[sorted.by]
    return column
      ? found.sort((a, b) => compare(column.value(a), column.value(b)) * (sorted.down ? -1 : 1))
      : found
  }, [rows, columns, choose, words, choice, sorted])
  return (
    <div class="sortable">
      <div class="filters">
        <label>
          Filter
          <input type="search" value={words} onInput={(event) => setWords(event.currentTarget.value)} />
        </label>
        <label>
          {choose.head}
          <select value={choice} onChange={(event) => setChoice(event.currentTarget.value)}>
            <option value="">all</option>
            {choices.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
        <span role="status">
          {shown.length} of {rows.length} shown
        </span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="scrolls" tabIndex={0} aria-label={caption}>
        <table>
          <caption>{caption}</caption>
          <thead>
            <tr>
              {columns.map(({ head, unit }, i) => (
                <th
                  key={head}
                  scope="col"
                  class={
                    rows.some((row) => typeof columns[i]?.value(row) === 'number') ? 'number' : undefined
                  }
                  aria-sort={sorted?.by !== i ? 'none' : sorted.down ? 'descending' : 'ascending'}
                >
                  <button
                    type="button"
                    onClick={() => setSorted({ by: i, down: sorted?.by === i && !sorted.down })}
                  >
                    {head}
                    <span aria-hidden="true">{sorted?.by !== i ? '' : sorted.down ? ' ▼' : ' ▲'}</span>
                    {unit ? <small>{unit}</small> : null}
                  </button>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.slice(0, most).map((row, index) => (
              <tr key={index} class={rowClass?.(row)}>
                {columns.map((column) => (
                  <td key={column.head} class={cellClass(column, row)}>
                    {textOf(column, row)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {shown.length > most ? (
        <button type="button" onClick={() => setMost(most + STEP)}>
          Show {Math.min(STEP, shown.length - most)} more
        </button>
      ) : null}
    </div>
  )
}

const cellClass = <Row,>({ value, sentences }: TableColumn<Row>, row: Row): string | undefined =>
  sentences ? 'sentences' : typeof value(row) === 'number' ? 'number' : undefined

const textOf = <Row,>({ value, text }: TableColumn<Row>, row: Row): string =>
  visible(text ? text(row) : String(value(row) ?? ''))

const collator = new Intl.Collator('en', { numeric: true })

/** Numbers by size, words by the alphabet; what is missing comes last. */
function compare(a: string | number | undefined, b: string | number | undefined): number {
  if (a === undefined || b === undefined) return Number(a === undefined) - Number(b === undefined)
  return typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b))
}
