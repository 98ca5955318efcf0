import { whenIdle } from '../pane/when-idle.js'
import { runJob } from './run-job.js'

let warmed = false

/**
 * Fetches, once and in idle time, what a test in hand will need next: the writer of workbooks and the finder. Later
 * they come from the browser's cache, also where the service has gone; `data-works-alone` on the page says when.
 */
export function warmUp(): void {
  if (warmed) return
  warmed = true
  // The service worker has every file of this page already.
  if (navigator.serviceWorker?.controller) {
    worksAlone()
    return
  }
  const fetchAll = (): void => {
    void Promise.all([
      import('../calc/understand.js'),
      import('../calc/choices.js'),
      import('../host/page/typed-cell.js'),
      runJob({ kind: 'warm' }),
    ])
      .then(worksAlone)
      .catch(() => {
        // Out of reach already: what is asked for later says so itself.
        warmed = false
      })
  }
  whenIdle(fetchAll)
}

const worksAlone = (): void => {
  document.documentElement.dataset.worksAlone = 'yes'
}
