import { render } from 'preact'
import type { ExcelApi, SetSupported } from './host/excel/excel-api.js'
import { createExcelHost } from './host/excel/excel-host.js'
import { noAnswerYet, waitForExcel } from './host/excel/wait-for-excel.js'
import { App } from './pane/app.js'
import { watchForMissingParts } from './pane/missing-part.js'
import { photosIn } from './pane/one-test/lists.js'
import { TestStore } from './pane/one-test/store.js'
import { startPage } from './start-page.js'

/** How long Excel may take before the pane says that it waits in vain. A later answer is taken all the same. */
const PATIENCE_MS = 6000

/** Waits for Excel in view of the user, and offers the plain page where Excel does not answer. */
export function startExcel(root: Element, base: URL): void {
  let wentOn = false
  const goOn = (): void => {
    wentOn = true
    void startPage(base).then(({ store, tests }) => render(<App store={store} tests={tests} />, root))
  }
  const wait = (why?: string): void => {
    if (!wentOn) render(<Waiting {...(why === undefined ? {} : { why })} onGoOn={goOn} />, root)
  }
  root.replaceChildren()
  wait()
  const patience = setTimeout(() => wait(noAnswerYet()), PATIENCE_MS)
  void waitForExcel().then((answer) => {
    clearTimeout(patience)
    if (!answer.excel) return wait(answer.why)
    void import('./functions/associate.js').then(({ associateFunctions }) => associateFunctions())
    if (wentOn) return
    const supported: SetSupported = (set, version) => Office.context.requirements.isSetSupported(set, version)
    if (!supported('ExcelApi', '1.9'))
      return wait('This Excel is too old for the pane: it needs ExcelApi 1.9')
    const { platform } = Office.context
    const host = createExcelHost(Excel as unknown as ExcelApi, supported, String(platform ?? ''))
    const store = new TestStore(host, base)
    watchForMissingParts((words) => store.tell(words))
    // A removed row may be brought back with Undo, so its photo goes only when the workbook is opened the next time.
    void store
      .start()
      .then(() => store.attempt(async () => host.photos?.keepOnly(photosIn(store.state.entries.lists))))
    window.addEventListener('pagehide', () => void store.save())
    render(<App store={store} />, root)
  })
}

interface WaitingProps {
  /** Why Excel is not there; nothing while it may still answer. */
  why?: string
  onGoOn: () => void
}

/** What is in the pane until Excel answers: never a blank, never a dead end. */
function Waiting({ why, onGoOn }: WaitingProps) {
  return (
    <main class="waiting">
      <h1>Draughtbook</h1>
      <p role="status">{why === undefined ? 'Waiting for Excel …' : `${why}.`}</p>
      <p>
        Without Excel the pane works as a plain page: open a test log from disk, and download the summary.
      </p>
      <button type="button" onClick={onGoOn}>
        Continue without Excel
      </button>
    </main>
  )
}
