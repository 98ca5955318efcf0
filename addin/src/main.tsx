import { render } from 'preact'
import { keepForOffline } from './offline/keep-for-offline.js'
import { App } from './pane/app.js'
import { startExcel } from './start-excel.js'
import { startPage } from './start-page.js'
import './style/index.css'

const root = document.getElementById('draughtbook')
if (!root) throw new Error('the page has no place for the pane')

/** The pane's own folder: the service that serves it is the only address it calls. */
const base = new URL('./', document.baseURI)

if (document.body.dataset.entry === 'excel') startExcel(root, base)
else
  void startPage(base).then(({ store, tests }) => {
    root.replaceChildren()
    render(<App store={store} tests={tests} />, root)
    return keepForOffline(base).then((kept) => kept && store.keptForOffline())
  })
