import './style/index.css'
import { render } from 'preact'
import { App } from './pane/app.js'
import { whenIdle } from './pane/when-idle.js'
import { startPage } from './start-page.js'

const root = document.getElementById('draughtbook')
if (!root) throw new Error('the page has no place for the pane')

/** The pane's own folder: the service that serves it is the only address it calls. */
const base = new URL('./', document.baseURI)

if (document.body.dataset.entry === 'excel')
  void import('./start-excel.js').then(({ startExcel }) => startExcel(root, base))
else
  void startPage(base).then(({ store, tests }) => {
    root.replaceChildren()
    render(<App store={store} tests={tests} />, root)
    // The first key typed must not wait for some hundred files.
    whenIdle(() => void keepForOffline(base).then((kept) => kept && store.keptForOffline()))
  })

/**
 * Keeps the page itself in this browser, and asks the browser to keep what is typed.
 * @returns whether the page opens without a network from now on; never rejects
 */
async function keepForOffline(base: URL): Promise<boolean> {
  if (!('serviceWorker' in navigator)) return false
  try {
    await navigator.serviceWorker.register(new URL('service-worker.js', base))
    await navigator.serviceWorker.ready
    await navigator.storage?.persist?.()
    return true
  } catch (error) {
    console.warn('The page cannot be saved for use without a network:', error)
    return false
  }
}
