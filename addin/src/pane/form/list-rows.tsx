import { useId } from 'preact/hooks'
import { type ListColumn, type ListName, type ListRow, listColumns, newRow } from '../one-test/lists.js'
import type { SectionProps } from '../one-test/section.js'
import { PhotoBox } from '../photo/photo-box.js'

/** The rows of a list as typed; changes go through the store, so they are kept and worked out at once. */
export function useRows(list: ListName, { store, state }: SectionProps) {
  const rows: readonly ListRow[] = state.entries.lists?.[list] ?? []
  const change = (edit: (rows: readonly ListRow[]) => readonly ListRow[]): void =>
    store.change((entries) => ({
      ...entries,
      lists: { ...entries.lists, [list]: edit(entries.lists?.[list] ?? []) },
    }))
  return { rows, change }
}

/** A list that grows: each row is a group of fields, with a button that removes it. */
export function ListRows({
  list,
  noun,
  store,
  state,
  tell,
  only,
}: SectionProps & {
  list: ListName
  noun: string
  /** A few words on a row's own result, shown beside its number. */
  tell?: (index: number) => string
  /** Some of the rows only, and how a new one among them starts; without it, all. */
  only?: { rows: (row: ListRow) => boolean; start: ListRow; add: string }
}) {
  const { rows, change } = useRows(list, { store, state })
  const columns: readonly ListColumn[] = listColumns[list]
  return (
    <div class="list" data-list={list}>
      {rows.map((row, index) => {
        if (only && !only.rows(row)) return null
        const fault = state.result?.site.faults.find(({ path }) => path.startsWith(`${list}[${index}]`))
        const words = tell?.(index)
        return (
          // Rows have no name of their own that could not change while it is typed.
          <fieldset class="run list-row" key={index}>
            <legend>
              {noun} {index + 1} {words ? <span class="tell">{words}</span> : null}
            </legend>
            <div class="fields">
              {columns
                .filter(({ when }) => !when || when(row))
                .map((column) => (
                  <RowField
                    key={column.path}
                    column={column}
                    store={store}
                    of={`${noun.toLowerCase()} ${index + 1}`}
                    text={row[column.path] ?? ''}
                    onText={(text) =>
                      change((all) =>
                        all.map((one, i) => (i === index ? { ...one, [column.path]: text } : one)),
                      )
                    }
                  />
                ))}
            </div>
            {fault ? <p class="fault">{fault.message}</p> : null}
            <button
              type="button"
              class="link"
              aria-label={`Remove ${noun.toLowerCase()} ${index + 1}`}
              onClick={() => change((all) => all.filter((_, i) => i !== index))}
            >
              Remove
            </button>
          </fieldset>
        )
      })}
      <button type="button" onClick={() => change((all) => [...all, { ...newRow(list), ...only?.start }])}>
        {only?.add ?? `Add ${/^[aeiou]/i.test(noun) ? 'an' : 'a'} ${noun.toLowerCase()}`}
      </button>
    </div>
  )
}

function RowField({
  column: { label, unit, kind, options },
  store,
  of,
  text,
  onText,
}: {
  column: ListColumn
  store: SectionProps['store']
  /** The row, in words. */
  of: string
  text: string
  onText: (text: string) => void
}) {
  const id = useId()
  if (kind === 'photo' && store.host.photos)
    return (
      <div class="field photo">
        <PhotoBox store={store} of={of} name={text} start={of.split(' ')[0] ?? 'photo'} onName={onText} />
      </div>
    )
  return (
    <div class={`field ${kind}`}>
      <label for={id}>
        {kind === 'photo' ? `${label}, file name` : label}
        {unit ? <span class="unit"> {unit}</span> : null}
      </label>
      <div class="entry">
        {options ? (
          <select id={id} value={text} onChange={(event) => onText(event.currentTarget.value)}>
            <option value="">–</option>
            {options.map(([value, shown]) => (
              <option key={value} value={value}>
                {shown}
              </option>
            ))}
          </select>
        ) : (
          <Typed id={id} kind={kind} text={text} onText={onText} />
        )}
      </div>
    </div>
  )
}

function Typed({
  id,
  kind,
  text,
  onText,
}: {
  id: string
  kind: ListColumn['kind']
  text: string
  onText: (text: string) => void
}) {
  const entry = {
    id,
    value: text,
    autoComplete: 'off' as const,
    onInput: (event: { currentTarget: HTMLInputElement }) => onText(event.currentTarget.value),
  }
  if (kind === 'date') return <input {...entry} type="date" />
  return kind === 'number' ? (
    <input {...entry} type="text" inputMode="decimal" />
  ) : (
    <input {...entry} type="text" />
  )
}
