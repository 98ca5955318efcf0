import { dayInWords } from '@draughtbook/shared-calc'
import { useId, useState } from 'preact/hooks'
import type { AskedValue } from '../../calc/ask-about.js'
import { cellReference, joinReference } from '../../host/address.js'
import { atPath } from '../../kept/at-path.js'
import { drawnOnChange } from '../drawn-on-change.js'
import type { Field } from '../fields.js'
import { unitsOf } from '../figures.js'
import type { TestEntries } from '../one-test/entries.js'
import type { SectionProps } from '../one-test/section.js'

/** One field: typed, or linked to a cell of the workbook; what is wrong with it stands under it. */
export function FieldRow({ field, store, state }: SectionProps & { field: Field }) {
  const { path } = field
  const entry = state.entries.fields[path]
  return (
    <FieldBox
      field={field}
      store={store}
      entry={entry}
      fault={faultOf(path, state)}
      asked={state.result?.asked[path]}
      cellText={entry && 'cell' in entry ? valueText(state.result?.draft, field) : ''}
      cells={store.host.hasWorkbook}
    />
  )
}

interface FieldBoxProps {
  field: Field
  store: SectionProps['store']
  entry: TestEntries['fields'][string] | undefined
  /** What is wrong with it. */
  fault: string | undefined
  asked: AskedValue | undefined
  /** What the linked cell was read as. */
  cellText: string
  /** There are cells to take a value from. */
  cells: boolean
}

const FieldBox = drawnOnChange(function Box(props: FieldBoxProps) {
  const { field, store, entry, fault, asked, cellText, cells } = props
  const id = useId()
  const hint = field.kind === 'choice' || field.kind === 'date' ? undefined : field.hint
  const described =
    [fault ? `${id}-fault` : '', hint ? `${id}-hint` : ''].filter(Boolean).join(' ') || undefined
  const linked = entry && 'cell' in entry ? entry.cell : undefined
  const unit = 'unit' in field ? field.unit : undefined
  // The unit of a cell is asked for only where the log does not state it.
  const needsUnit = entry && 'cell' in entry && (entry.unit !== undefined || fault !== undefined)
  const units = linked === undefined || needsUnit ? unitsOf(field.path) : []
  const typed = entry && 'text' in entry ? entry : undefined
  // A unit chosen before the number is typed waits for it.
  const [waiting, setUnit] = useState<string>()
  const put = (part: { text?: string; unit?: string; kept?: true }): void => {
    const { text = '', unit: chosen } = { ...(waiting !== undefined && { unit: waiting }), ...typed, ...part }
    store.setField(field.path, {
      text,
      ...(chosen !== undefined && { unit: chosen }),
      ...(part.kept && { kept: true }),
    })
  }
  const pick = async (): Promise<void> => {
    const block = await store.attempt(() => store.host.selection())
    if (!block) return
    const reference =
      block.values.length === 0 ? joinReference(block.sheet, block.address) : cellReference(block, 0, 0)
    store.setField(field.path, { cell: reference })
  }
  return (
    <div class={`field ${field.kind}${fault ? ' wrong' : ''}`} data-path={field.path}>
      <label for={id}>
        {field.label}
        {unit && units.length < 2 ? <span class="unit"> {unit}</span> : null}
        {field.needed ? (
          <span class="needed" title="needed">
            {' '}
            *
          </span>
        ) : null}
      </label>
      <div class="entry">
        {linked === undefined ? (
          <Typed
            id={id}
            field={field}
            text={typed?.text ?? ''}
            described={described}
            wrong={fault !== undefined}
            onText={(text) => put({ text })}
            onDone={(text) => {
              const parted = withoutUnit(text, units)
              if (parted) put(parted)
            }}
          />
        ) : (
          <button
            type="button"
            id={id}
            class="link"
            aria-describedby={described}
            title="Go to the cell"
            onClick={() => void store.attempt(() => store.host.jump(linked))}
          >
            <u>{linked}</u> <output>{cellText}</output>
          </button>
        )}
        {units.length > 1 ? (
          <select
            class="unit-choice"
            aria-label={`Unit of ${field.label}`}
            value={linked === undefined ? (typed?.unit ?? waiting ?? units[0]) : (entry?.unit ?? '')}
            onChange={(event) => {
              const chosen = event.currentTarget.value
              if (linked !== undefined) {
                store.setField(field.path, { cell: linked, ...(chosen !== '' && { unit: chosen }) })
                return
              }
              setUnit(chosen)
              put({ unit: chosen })
            }}
          >
            {linked === undefined ? null : <option value="">unit?</option>}
            {units.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        ) : null}
        {linked === undefined ? (
          !cells || field.kind === 'choice' || field.kind === 'long' ? null : (
            <button
              type="button"
              class="icon take-cell"
              aria-label={`Take ${field.label} from the selected cell`}
              title="Take from the selected cell"
              onClick={() => void pick()}
            >
              <PickIcon />
            </button>
          )
        ) : (
          <button
            type="button"
            class="icon"
            aria-label={`Type ${field.label} instead of taking it from ${linked}`}
            title="Type instead"
            onClick={() => store.setField(field.path, undefined)}
          >
            ×
          </button>
        )}
      </div>
      {hint ? (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {fault ? (
        <p class="fault" id={`${id}-fault`}>
          {fault}
        </p>
      ) : null}
      {asked && typed ? (
        <p class="asked">
          {asked.meant.map((one) => (
            <button type="button" key={`${one.text} ${one.unit}`} onClick={() => put(one)}>
              It is {one.text} {one.unit}
            </button>
          ))}
          {asked.canKeep ? (
            <button type="button" onClick={() => put({ kept: true })}>
              Keep {typed.text.trim()} {typed.unit ?? units[0] ?? unit}
            </button>
          ) : null}
        </p>
      ) : null}
    </div>
  )
})

interface TypedProps {
  id: string
  field: Field
  text: string
  described: string | undefined
  wrong: boolean
  onText: (text: string) => void
  /** The field is left. */
  onDone: (text: string) => void
}

function Typed({ id, field, text, described, wrong, onText, onDone }: TypedProps) {
  const common = { id, 'aria-describedby': described, 'aria-invalid': wrong }
  if (field.kind === 'choice')
    return (
      <select {...common} value={text} onChange={(event) => onText(event.currentTarget.value)}>
        <option value="">–</option>
        {field.options.map(([value, label]) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    )
  if (field.kind === 'long')
    return (
      <textarea {...common} rows={2} value={text} onInput={(event) => onText(event.currentTarget.value)} />
    )
  const entry = {
    ...common,
    value: text,
    onInput: (event: { currentTarget: HTMLInputElement }) => onText(event.currentTarget.value),
  }
  if (field.kind === 'date') return <input {...entry} type="date" />
  return field.kind === 'number' ? (
    <input
      {...entry}
      type="text"
      inputMode="decimal"
      autoComplete="off"
      spellcheck={false}
      placeholder={field.placeholder}
      onBlur={(event) => onDone(event.currentTarget.value)}
    />
  ) : (
    <input {...entry} type="text" autoComplete="off" />
  )
}

/** "1004 hPa" is 1004 with the unit hPa chosen beside it, where that unit can be chosen. */
function withoutUnit(text: string, units: readonly string[]): { text: string; unit: string } | undefined {
  const typed = text.trim()
  const before = (unit: string) => typed.slice(0, -unit.length).trimEnd()
  const unit = units.find((one) => typed.toLowerCase().endsWith(one.toLowerCase()) && /\d$/.test(before(one)))
  return unit === undefined ? undefined : { text: before(unit), unit }
}

export function PickIcon() {
  return (
    <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
      <path d="M2 2h12v12H2zM2 6h12M6 2v12" fill="none" stroke="currentColor" />
      <path d="M6 6h4v4H6z" fill="currentColor" />
    </svg>
  )
}

/** What the reader or the schema holds against this field; a field merely not filled in yet is not called wrong. */
function faultOf(path: string, { entries, result }: SectionProps['state']): string | undefined {
  if (!entries.fields[path]) return undefined
  const told = result?.findings.find(({ rule, where }) => rule === 'unusable-entry' && where.includes(path))
  return told?.message ?? result?.problems.find((problem) => problem.path === path)?.message
}

function valueText(draft: Record<string, unknown> | undefined, field: Field): string {
  const value = atPath(draft, field.path)
  if (typeof value === 'number') return String(Number(value.toPrecision(8)))
  if (typeof value !== 'string') return ''
  if (field.kind === 'date') return dayInWords(value)
  const choice = field.kind === 'choice' ? field.options.find(([id]) => id === value) : undefined
  return choice?.[1] ?? value
}
