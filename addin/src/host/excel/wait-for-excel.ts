/** What office.js answered: the host, or why there is none. */
export type ExcelAnswer = { excel: true } | { excel: false; why: string }

/**
 * Waits for office.js to load and to name its host. It may do neither (a blocked address, a page opened outside
 * Excel with a left-over hint), so the caller shows what is waited for and may give up after `limit_ms`.
 */
export function waitForExcel(
  limit_ms: number,
  page: Window & typeof globalThis = window,
): Promise<ExcelAnswer> {
  return new Promise((resolve) => {
    const stop = page.setTimeout(
      () =>
        resolve({
          excel: false,
          // A script that failed before this code ran leaves no trace but its absence.
          why: typeof Office === 'undefined' ? 'Office.js could not be loaded' : 'Excel has not answered yet',
        }),
      limit_ms,
    )
    const answer = (result: ExcelAnswer): void => {
      page.clearTimeout(stop)
      resolve(result)
    }
    const ask = (): void => {
      void Office.onReady().then(({ host }) =>
        answer(
          String(host) === 'Excel'
            ? { excel: true }
            : { excel: false, why: 'This page is not open inside Excel' },
        ),
      )
    }
    if (typeof Office !== 'undefined') return ask()
    const script = page.document.getElementById('office-js')
    if (!script) return answer({ excel: false, why: 'This page does not load Office.js' })
    script.addEventListener('load', ask)
    script.addEventListener('error', () => answer({ excel: false, why: 'Office.js could not be loaded' }))
  })
}
