/** Said where a part of the page that is fetched later is not to be had; the line at the top says whether the entries are saved. */
export const MISSING_PART =
  'A part of this page could not be loaded: the service cannot be reached, or it has a newer version of the page. ' +
  'Reload the page when the service can be reached.'

/** As Chromium and Firefox say it, then Safari. */
const NOT_LOADED = /dynamically imported module|importing a module script failed/i

/** Whether an error is that of a part that could not be loaded. */
export const isMissingPart = (error: unknown): boolean =>
  error instanceof TypeError && NOT_LOADED.test(error.message)

/** Calls back whenever a part of the page cannot be loaded, whoever asked for it. */
export function watchForMissingParts(tell: (words: string) => void): void {
  window.addEventListener('vite:preloadError', () => tell(MISSING_PART))
}
