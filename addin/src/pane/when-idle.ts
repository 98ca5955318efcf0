/** Runs work once the page has nothing else to do, at the latest after 3 s. */
export function whenIdle(work: () => void): void {
  if ('requestIdleCallback' in window) window.requestIdleCallback(work, { timeout: 3000 })
  else setTimeout(work, 1000)
}
