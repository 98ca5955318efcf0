import { useId, useState } from 'preact/hooks'

interface NumberChoiceProps {
  label: string
  hint: string
  value: number | undefined
  /** Whether a number can be used; what it has to be stands in `must`. */
  fits: (value: number) => boolean
  must: string
  onValue: (value: number | undefined) => void
}

/** A number that may be left out. One that cannot be used is not passed on, and says why. */
export function NumberChoice({ label, hint, value, fits, must, onValue }: NumberChoiceProps) {
  const id = useId()
  const [text, setText] = useState(value === undefined ? '' : String(value))
  const typed = Number(text.replace(',', '.'))
  const wrong = text.trim() !== '' && !fits(typed)
  return (
    <div class="wish">
      <label for={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        value={text}
        aria-invalid={wrong}
        aria-describedby={`${id}-hint`}
        onInput={({ currentTarget: { value: now } }) => {
          setText(now)
          const number = Number(now.replace(',', '.'))
          if (now.trim() === '') onValue(undefined)
          else if (fits(number)) onValue(number)
        }}
      />
      <span id={`${id}-hint`} class={wrong ? 'fault' : 'hint'}>
        {wrong ? must : hint}
      </span>
    </div>
  )
}

type WholeProps = Pick<NumberChoiceProps, 'label' | 'hint' | 'value' | 'onValue'>

const MOST = 100_000

export const WholeNumber = (props: WholeProps) => (
  <NumberChoice
    {...props}
    fits={(value) => Number.isInteger(value) && value >= 0 && value <= MOST}
    must="a whole number"
  />
)
