import { useId, useRef } from 'preact/hooks'
import { pastedRows, whyNotPasted } from './typed-run.js'

interface ValueListProps {
  label: string
  unit: string
  values: readonly string[]
  /** Place of the list among the faults. */
  place: string
  faults: Readonly<Record<string, string>>
  onChange: (values: readonly string[], at: number) => void
  /** A value that was asked about is kept as it stands. */
  onKeep: (text: string) => void
  /** Says why something was not taken. */
  onRefused: (words: string) => void
}

/** Values typed one after the other: Enter goes to the next. A keypad without a minus has the button for it. */
export function ValueList(props: ValueListProps) {
  const { label, unit, values, place, faults, onChange, onKeep, onRefused } = props
  const id = useId()
  const room = useRef<HTMLDivElement>(null)
  const last = useRef(0)
  const shown = values.at(-1)?.trim() === '' ? values : [...values, '']
  const put = (at: number, text: string): void => {
    const next = [...values]
    while (next.length <= at) next.push('')
    next[at] = text
    // Only the end may be blank: it is the one to type into.
    while (next.length > 0 && next.at(-1)?.trim() === '') next.pop()
    onChange(next, at)
  }
  const focus = (at: number): void => room.current?.querySelectorAll('input')[at]?.focus()
  const turnSign = (): void => {
    const at = last.current
    const text = (shown[at] ?? '').trim()
    put(at, /^[-−–]/.test(text) ? text.slice(1) : `-${text}`)
    focus(at)
  }
  /** Cells of a row or a column, copied in a spreadsheet. */
  const paste = (at: number) => (event: ClipboardEvent) => {
    const cells = pastedRows(event.clipboardData?.getData('text/plain') ?? '')
    if (!cells) return
    event.preventDefault()
    const refused = whyNotPasted(cells.length === 1 ? (cells[0]?.map((cell) => [cell]) ?? []) : cells, 1)
    if (refused !== undefined) onRefused(refused)
    else onChange([...values.slice(0, at), ...cells.flat().filter(Boolean)], at)
  }
  const wrong = shown.flatMap((text, at) => {
    const words = faults[`${place}[${at}]`]
    return words === undefined ? [] : [{ words, text: text.trim(), at }]
  })
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a flex row in every browser
    <div class="value-list" role="group" aria-labelledby={id} ref={room}>
      <p id={id} class="value-label">
        {label} <span class="unit">{unit}</span>
      </p>
      <div class="values">
        {shown.map((text, at) => (
          <input
            // Values have no name but their place.
            key={at}
            aria-label={`${label}, value ${at + 1}`}
            aria-invalid={faults[`${place}[${at}]`] !== undefined}
            inputMode="decimal"
            autoComplete="off"
            spellcheck={false}
            enterKeyHint="next"
            value={text}
            onFocus={() => {
              last.current = at
            }}
            onInput={(event) => put(at, event.currentTarget.value)}
            onPaste={paste(at)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return
              event.preventDefault()
              focus(at + 1)
            }}
          />
        ))}
        <button
          type="button"
          class="sign"
          aria-label={`Change the sign, ${label.toLowerCase()}`}
          onClick={turnSign}
        >
          ±
        </button>
      </div>
      {wrong.map(({ words, text, at }) => (
        <p class="fault" key={at}>
          {words}{' '}
          {words.includes('unusually') ? (
            <button type="button" onClick={() => onKeep(text)}>
              Keep {text}
            </button>
          ) : null}
        </p>
      ))}
    </div>
  )
}
