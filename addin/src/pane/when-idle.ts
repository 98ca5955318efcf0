/** Runs work once the page has nothing else to do, at the latest after this time. */
export function whenIdle(work: () => void, latest_ms = 3000): void {
  if ('requestIdleCallback' in window) window.requestIdleCallback(work, { timeout: latest_ms })
  else setTimeout(work, latest_ms / 3)
}

/** Resolves once what has changed so far is drawn; in a page that is not on show, soon. */
export const drawn = (): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve))
    setTimeout(resolve, 250)
  })

/** Resolves once what has changed so far is drawn and the page has nothing else to do, at the latest a moment later. */
export const drawnAndIdle = async (): Promise<void> => {
  await drawn()
  await new Promise<void>((resolve) => whenIdle(resolve, 200))
}
