import { useEffect, useState } from 'preact/hooks'
import type { PageTests } from './page-tests.js'

/** What has to be answered before a log is taken. */
export function PageQuestionBox({ tests }: { tests: PageTests }) {
  const [question, setQuestion] = useState(tests.question)
  useEffect(() => tests.listen(() => setQuestion(tests.question)), [tests])
  if (!question) return null
  return (
    <div class="asking" role="alertdialog" aria-label="Question about the log">
      <span>{question.words}</span>
      {question.answers.map(({ label, act }) => (
        <button type="button" key={label} onClick={() => void act()}>
          {label}
        </button>
      ))}
    </div>
  )
}
