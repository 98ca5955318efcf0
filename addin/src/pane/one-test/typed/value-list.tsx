import { useId, useRef } from 'preact/hooks'

interface ValueListProps {
  label: string
  unit: string
  values: readonly string[]
  /** Place of the list among the faults. */
  place: string
  faults: Readonly<Record<string, string>>
  onChange: (values: readonly string[], at: number) => void
}

/** Values typed one after the other: Enter goes to the next. A keypad without a minus has the button for it. */
export function ValueList({ label, unit, values, place, faults, onChange }: ValueListProps) {
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
  const wrong = shown.flatMap((_, at) => faults[`${place}[${at}]`] ?? [])
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
      {wrong.map((words) => (
        <p class="fault" key={words}>
          {words}
        </p>
      ))}
    </div>
  )
}
