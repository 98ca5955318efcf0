import { counted, type Finding } from '@draughtbook/shared-calc'
import { useEffect, useRef } from 'preact/hooks'
import type { UnderstoodLog } from '../../../calc/understand.js'
import { labelOf } from '../../fields.js'
import { Fold } from '../../fold.js'
import { Said } from '../../said.js'
import type { SectionProps } from '../section.js'
import { KeptAnswers } from './kept-answers.js'
import { QuestionBox } from './question-box.js'
import { type ProposalState, useProposal } from './use-proposal.js'
import { UsesList } from './uses-list.js'

/** How an open log is understood: what each part is used as, what it leaves open, and one button that accepts it. */
export function Proposal(props: SectionProps) {
  const proposal = useProposal(props)
  const { read, busy, kept, look, close } = proposal
  const { log } = props.state.entries
  return (
    <div class="proposal">
      {read ? (
        <Understood proposal={proposal} read={read} {...props} />
      ) : (
        <>
          {log ? <p>Read as you accepted it.</p> : null}
          {log && kept ? <KeptAnswers kept={kept} base={props.store.base} /> : null}
          <button
            type="button"
            class={log ? '' : 'main-action'}
            disabled={busy}
            onClick={() => void look(log?.answers ?? {})}
          >
            {busy ? 'Reading …' : log ? 'Read it again' : 'Find the readings'}
          </button>
        </>
      )}
      {read ? (
        <button type="button" class="link" onClick={close}>
          {read.test?.record ? 'No, I will pick the cells myself' : 'Pick the cells myself'}
        </button>
      ) : null}
    </div>
  )
}

function Understood({
  proposal: { answers, look, accept, busy, late, forget },
  read,
  store,
}: SectionProps & { proposal: ProposalState; read: UnderstoodLog }) {
  const { test, tests, uses } = read
  const onCell = (reference: string): void => void store.attempt(() => store.host.jump(reference))
  const room = useRef<HTMLUListElement>(null)
  const action = useRef<HTMLButtonElement>(null)
  // By keyboard one goes on with the next question; on a tablet the keys on the screen stay away unless they were in use.
  const typed = useRef(false)
  const answer = (path: string, value: string): void => {
    typed.current = document.activeElement instanceof HTMLInputElement
    void look({ ...answers, [path]: value })
  }
  useEffect(() => {
    if (!typed.current) return
    typed.current = false
    const next = room.current?.querySelector<HTMLElement>('.choices button, input') ?? action.current
    next?.focus()
  }, [read])
  const without = (path: string): void =>
    void look(Object.fromEntries(Object.entries(answers).filter(([one]) => one !== path)))
  const questions = test?.questions ?? []
  const problems = [...read.problems, ...(test?.problems ?? []), ...twice(read)]
  const used = uses.filter(({ usedAs }) => usedAs !== undefined).length
  const warnings = (test?.findings ?? read.findings).filter(({ severity }) => severity !== 'note')
  const given = Object.entries(answers).filter(([path]) => path !== 'test')
  return (
    <>
      {late ? (
        <p class="hint" role="status">
          The service has not answered. The log is read without the firm’s layouts.
        </p>
      ) : null}
      {tests.length > 1 ? (
        <fieldset class="tests">
          <legend>This log holds {tests.length} tests. Which one?</legend>
          {tests.map(({ key, name }) => (
            <button
              type="button"
              key={key}
              aria-pressed={answers.test === key}
              onClick={() => answer('test', key)}
            >
              {key === name ? key : `${key}: ${name}`}
            </button>
          ))}
        </fieldset>
      ) : null}
      {questions.length > 0 ? (
        <ul class="questions" aria-label="Questions about this log" ref={room}>
          {questions.map((question) => (
            <QuestionBox
              key={question.path + question.text}
              question={question}
              onAnswer={(value) => answer(question.path, value)}
              onCell={onCell}
            />
          ))}
        </ul>
      ) : null}
      {read.waiting?.length ? (
        <p class="hint" role="status">
          Fill in the log in the sheet. Still empty: {read.waiting.join(', ')}.
        </p>
      ) : null}
      {problems.map(({ cell, path, message }) => (
        <p class="fault" role="alert" key={`${cell}${path}${message}`}>
          <Said text={cell ? `${cell}: ${message}` : message} />
        </p>
      ))}
      {test?.record && problems.length === 0 ? (
        <button type="button" class="main-action" ref={action} disabled={busy} onClick={() => void accept()}>
          Accept and calculate
        </button>
      ) : null}
      {given.length > 0 ? (
        <ul class="given" aria-label="Answers given">
          {given.map(([path, value]) => (
            <li key={path}>
              {answerName(path)}: {value}{' '}
              <button type="button" class="link" onClick={() => without(path)}>
                ask again
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {read.kept && read.layout !== undefined ? (
        <p class="hint">
          Read with what you answered for "{read.layout}".{' '}
          <button type="button" class="link" onClick={() => void forget(read.layout ?? '')}>
            Forget these answers
          </button>
        </p>
      ) : null}
      <Warnings findings={warnings} />
      {uses.length > 0 && !read.waiting ? (
        <Fold
          class="sub"
          open={read.layout === undefined || used < uses.length}
          summary={`${read.layout === undefined ? '' : `Read by the layout "${read.layout}": `}${counted(used, 'entry', 'entries')} used, ${uses.length - used} left out`}
        >
          <UsesList uses={uses} onCell={onCell} />
        </Fold>
      ) : null}
    </>
  )
}

/** What was answered: the field's own label, or else the words of its path. */
function answerName(path: string): string {
  const label = labelOf(path)
  return label === path
    ? path
        .replaceAll('.', ', ')
        .replace(/([a-z])([A-Z])/g, '$1 $2')
        .toLowerCase()
    : label
}

function Warnings({ findings }: { findings: readonly Finding[] }) {
  return findings.length === 0 ? null : (
    <ul class="warnings" aria-label="Warnings about this log">
      {findings.map(({ rule, message, cells = [] }) => (
        <li key={rule + message} data-warning={rule}>
          <Said text={cells.length > 0 ? `${cells.slice(0, 3).join(', ')}: ${message}` : message} />
        </li>
      ))}
    </ul>
  )
}

/** The pane has room for one run of each direction. */
function twice({ test }: UnderstoodLog) {
  const runs = test?.record?.runs ?? []
  return new Set(runs.map(({ direction }) => direction)).size === runs.length
    ? []
    : [
        {
          path: 'runs',
          cell: undefined,
          message:
            'This test has two runs in one direction, and the pane takes only one. Evaluate it with the command line.',
        },
      ]
}
