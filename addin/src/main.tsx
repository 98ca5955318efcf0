import './style/index.css'
import { render } from 'preact'
import { keepForOffline } from './kept/keep-for-offline.js'
import { App } from './pane/app.js'
import { whenIdle } from './pane/when-idle.js'
import { startPage } from './start-page.js'

const root = document.getElementById('draughtbook')
if (!root) throw new Error('the page has no place for the pane')

/** The pane's own folder: the service that serves it is the only address it calls. */
const base = new URL('./', document.baseURI)

/** Whoever opens the page types first: some hundred files are fetched after that. */
const KEEP_AFTER_ms = 1500

if (document.body.dataset.entry === 'excel')
  void import('./start-excel.js').then(({ startExcel }) => startExcel(root, base))
else
  void startPage(base).then(({ store, tests }) => {
    root.replaceChildren()
    render(<App store={store} tests={tests} />, root)
    const keep = (): void =>
      void keepForOffline(base, {
        kept: () => store.keptForOffline('yes'),
        refused: (why) => store.keptForOffline(why),
        newer: () => store.newerIsReady(),
      })
    setTimeout(() => whenIdle(keep), KEEP_AFTER_ms)
  })
