import { render } from 'preact'
import type { ExcelApi, SetSupported } from './host/excel/excel-api.js'
import { createExcelHost } from './host/excel/excel-host.js'
import { waitForExcel } from './host/excel/wait-for-excel.js'
import { App } from './pane/app.js'
import { TestStore } from './pane/test/store.js'
import { Waiting } from './pane/waiting.js'
import { startPage } from './start-page.js'

/** How long Excel may take before the pane offers to go on without it. */
const PATIENCE_MS = 6000

/** Waits for Excel in view of the user, and offers the plain page where Excel does not answer. */
export function startExcel(root: Element, base: URL): void {
  const goOn = (): void => {
    const { store, host } = startPage(base)
    render(<App store={store} page={host} />, root)
  }
  root.replaceChildren()
  render(<Waiting onGoOn={goOn} />, root)
  void waitForExcel(PATIENCE_MS).then((answer) => {
    if (!answer.excel) {
      render(<Waiting why={answer.why} onGoOn={goOn} />, root)
      return
    }
    const supported: SetSupported = (set, version) => Office.context.requirements.isSetSupported(set, version)
    if (!supported('ExcelApi', '1.9')) {
      render(<Waiting why="This Excel is too old for the pane: it needs ExcelApi 1.9" onGoOn={goOn} />, root)
      return
    }
    const store = new TestStore(createExcelHost(Excel as unknown as ExcelApi, supported), base)
    void store.start()
    window.addEventListener('pagehide', () => void store.save())
    void import('./functions/associate.js').then(({ associateFunctions }) => associateFunctions())
    render(<App store={store} />, root)
  })
}
