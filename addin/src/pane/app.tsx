import { useEffect, useMemo, useState } from 'preact/hooks'
import { keepAccessToken } from '../service/access-token.js'
import { MonthView } from './month/month-view.js'
import { isUntouched } from './one-test/entries.js'
import { aboutTest } from './one-test/standing.js'
import type { TestStore } from './one-test/store.js'
import { TestView } from './one-test/test-view.js'
import { OriginLine } from './origin-line.js'
import { EmptyLog } from './page/empty-log.js'
import { OpenFile } from './page/open-file.js'
import { PageGrid } from './page/page-grid.js'
import type { PageTests } from './page/page-tests.js'
import { TestsView } from './page/tests-view.js'
import { RerunView } from './rerun/rerun-view.js'
import { useOpenLog, useTestState } from './use-changes.js'

const VIEWS = [
  ['test', 'Test'],
  ['tests', 'All tests'],
  ['month', 'Month'],
  ['rerun', 'Re-run'],
] as const
type View = (typeof VIEWS)[number][0]

interface AppProps {
  store: TestStore
  /** The tests kept in this browser, where the pane is not inside Excel. */
  tests?: PageTests
}

/** The pane: three views, one line that says where the figures come from, and an open log's grid beside them. */
export function App({ store, tests }: AppProps) {
  const page = tests?.host
  const [view, setView] = useState<View>('test')
  const state = useTestState(store)
  // The same node again is not drawn again: the grid follows its host, not every keystroke in the forms.
  const grid = useMemo(() => (tests ? <PageGrid tests={tests} /> : null), [tests])
  const beside = useOpenLog(page) && view === 'test'
  useEffect(() => {
    const undo = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.key.toLowerCase() !== 'z') return
      // A cell being typed into the sheet is the browser's own to take back.
      if (event.target instanceof Element && event.target.closest('.page-grid')) return
      event.preventDefault()
      store.undo()
    }
    window.addEventListener('keydown', undo)
    return () => window.removeEventListener('keydown', undo)
  }, [store])
  return (
    <div class={`shell${beside ? ' with-grid' : ''}${page && !beside ? ' no-cells' : ''}`}>
      {beside ? grid : null}
      <div class="pane">
        <header class="top">
          <h1>Draughtbook</h1>
          <nav aria-label="Views">
            {VIEWS.filter(([id]) => id !== 'tests' || tests).map(([id, label]) => (
              <button
                type="button"
                key={id}
                aria-current={view === id ? 'page' : undefined}
                onClick={() => setView(id)}
              >
                {label}
              </button>
            ))}
          </nav>
          {view === 'test' ? (
            <button type="button" class="undo" disabled={!state.canUndo} onClick={() => store.undo()}>
              Undo
            </button>
          ) : null}
          {tests && view === 'test' ? (
            <>
              {isUntouched(state.entries) && !tests.host.hasWorkbook ? null : (
                <button type="button" onClick={() => void tests.create()}>
                  New test
                </button>
              )}
              {isUntouched(state.entries) && !tests.host.hasWorkbook ? <EmptyLog tests={tests} /> : null}
              <OpenFile tests={tests} store={store} />
            </>
          ) : null}
        </header>
        {tests ? <PageQuestionBox tests={tests} /> : null}
        <OriginLine
          state={state}
          name={aboutTest(state).name}
          onDismiss={() => store.dismissFault()}
          onToken={(token) => {
            keepAccessToken(token)
            store.askAgain()
          }}
        />
        <main>
          {view === 'test' ? <TestView store={store} state={state} /> : null}
          {view === 'tests' && tests ? <TestsView tests={tests} onOpen={() => setView('test')} /> : null}
          {view === 'month' ? <MonthView /> : null}
          {view === 'rerun' ? <RerunView /> : null}
        </main>
      </div>
    </div>
  )
}

/** What has to be answered before a log is taken. */
function PageQuestionBox({ tests }: { tests: PageTests }) {
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
