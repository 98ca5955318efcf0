import { useEffect, useMemo, useState } from 'preact/hooks'
import { keepAccessToken } from '../service/access-token.js'
import { DrawingGuard } from './drawing-guard.js'
import { fetchedView } from './fetched-view.js'
import { isUntouched } from './one-test/entries.js'
import { aboutTest } from './one-test/standing.js'
import type { TestStore } from './one-test/store.js'
import { TestView } from './one-test/test-view.js'
import { OriginLine } from './origin-line.js'
import { EmptyLog } from './page/empty-log.js'
import { OpenFile } from './page/open-file.js'
import { PageGrid } from './page/page-grid.js'
import type { PageTests } from './page/page-tests.js'
import { useOpenLog, useTestState } from './use-changes.js'

const TestsView = fetchedView(async () => (await import('./page/tests-view.js')).TestsView)
const MonthView = fetchedView(async () => (await import('./month/month-view.js')).MonthView)
const BuildingView = fetchedView(async () => (await import('./several/building-view.js')).BuildingView)
const StagesView = fetchedView(async () => (await import('./several/stages-view.js')).StagesView)
const RerunView = fetchedView(async () => (await import('./rerun/rerun-view.js')).RerunView)

const ON_SITE = [
  ['test', 'Test'],
  ['tests', 'All tests'],
] as const
/** On a narrow screen these stand behind one button, so that they take no room on site. */
const OFFICE = [
  ['month', 'Month'],
  ['building', 'Building'],
  ['stages', 'Stages'],
  ['rerun', 'Re-run'],
] as const
type View = (typeof ON_SITE | typeof OFFICE)[number][0]

interface AppProps {
  store: TestStore
  /** The tests kept in this browser, where the pane is not inside Excel. */
  tests?: PageTests
}

/** The pane: its views, one line that says where the figures come from, and an open log's grid beside them. */
export function App({ store, tests }: AppProps) {
  const page = tests?.host
  const [view, setView] = useState<View>('test')
  const [office, setOffice] = useState(false)
  const inOffice = OFFICE.some(([id]) => id === view)
  const link = ([id, label]: readonly [View, string]) => (
    <button
      type="button"
      key={id}
      aria-current={view === id ? 'page' : undefined}
      onClick={() => {
        setView(id)
        setOffice(false)
      }}
    >
      {label}
    </button>
  )
  const state = useTestState(store)
  // Nothing entered and no log open: opening one is what most do first.
  const fresh = tests !== undefined && isUntouched(state.entries) && !tests.host.hasWorkbook
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
    <div class={beside ? 'shell with-grid' : 'shell'}>
      {beside ? grid : null}
      <div class="pane">
        <header class="top">
          <h1>Draughtbook</h1>
          <nav aria-label="Views" class={inOffice || office ? 'office' : undefined}>
            {ON_SITE.filter(([id]) => id !== 'tests' || tests).map(link)}
            <button
              type="button"
              class="to-office"
              aria-expanded={inOffice || office}
              onClick={() => setOffice(!office)}
            >
              Office
            </button>
            <span class="office-views">{OFFICE.map(link)}</span>
          </nav>
          {view === 'test' ? (
            <div class="top-actions">
              {fresh && !state.canUndo ? null : (
                <button type="button" class="undo" disabled={!state.canUndo} onClick={() => store.undo()}>
                  Undo
                </button>
              )}
              {tests && !fresh ? (
                <button type="button" onClick={() => void tests.create()}>
                  New test
                </button>
              ) : null}
              {tests && fresh ? <EmptyLog tests={tests} /> : null}
              {tests ? <OpenFile tests={tests} store={store} first={fresh} /> : null}
            </div>
          ) : null}
        </header>
        {tests ? <PageQuestionBox tests={tests} /> : null}
        <OriginLine
          state={state}
          aside={inOffice}
          name={aboutTest(state).name}
          onDismiss={() => store.dismissFault()}
          onToken={(token, lasting) => {
            keepAccessToken(token, lasting)
            store.askAgain()
          }}
        />
        <main>
          <DrawingGuard key={view} of={view === 'test' ? state.entries : view}>
            {view === 'test' ? <TestView store={store} state={state} /> : null}
            {view === 'tests' && tests ? <TestsView tests={tests} onOpen={() => setView('test')} /> : null}
            {view === 'month' ? <MonthView /> : null}
            {view === 'building' ? <BuildingView {...(tests && { tests })} /> : null}
            {view === 'stages' ? <StagesView {...(tests && { tests })} /> : null}
            {view === 'rerun' ? <RerunView /> : null}
          </DrawingGuard>
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
