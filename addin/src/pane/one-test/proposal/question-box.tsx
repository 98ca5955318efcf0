import type { Question } from '@draughtbook/shared-calc/log'
import { useId, useState } from 'preact/hooks'
import { Said } from '../../said.js'

interface QuestionBoxProps {
  question: Question
  onAnswer: (value: string) => void
  onCell: (reference: string) => void
}

/** One open question: its likely answers as buttons, and room for another. */
export function QuestionBox({ question, onAnswer, onCell }: QuestionBoxProps) {
  const { path, text, cells, choices, example } = question
  const id = useId()
  const [own, setOwn] = useState('')
  const [cell] = cells
  const label = choices.length > 0 ? 'Another answer' : 'Answer'
  return (
    <li class="question" data-question={path}>
      <p id={`${id}-text`}>
        <Said text={text} />{' '}
        {cell ? (
          <button type="button" class="link" title="Go to the cell" onClick={() => onCell(cell)}>
            <Said text={cell} />
          </button>
        ) : null}
      </p>
      {choices.length > 0 ? (
        <p class="choices">
          {choices.map((choice) => (
            <button
              type="button"
              key={choice.value}
              title={choice.reason}
              aria-describedby={`${id}-text`}
              onClick={() => onAnswer(choice.value)}
            >
              <Said text={choice.label} />
            </button>
          ))}
        </p>
      ) : null}
      <form
        class="own-answer"
        onSubmit={(event) => {
          event.preventDefault()
          if (own.trim() !== '') onAnswer(own.trim())
        }}
      >
        <input
          aria-label={`${label}: ${text}`}
          placeholder={example === undefined ? 'another answer' : `for example ${example}`}
          value={own}
          onInput={(event) => setOwn(event.currentTarget.value)}
        />
        <button type="submit">Answer</button>
      </form>
    </li>
  )
}
