/** What office.js answered: the host, or why there is none. */
export type ExcelAnswer = { excel: true } | { excel: false; why: string }

/**
 * Waits for office.js to load and to name its host. It may do neither (a blocked address, a page opened outside
 * Excel with a left-over hint): the caller shows what is waited for, and does not rely on an answer.
 */
export function waitForExcel(page: Window & typeof globalThis = window): Promise<ExcelAnswer> {
  return new Promise((resolve) => {
    const ask = (): void => {
      void Office.onReady().then(({ host }) =>
        resolve(
          String(host) === 'Excel'
            ? { excel: true }
            : { excel: false, why: 'This page is not open inside Excel' },
        ),
      )
    }
    if (typeof Office !== 'undefined') return ask()
    const script = page.document.getElementById('office-js')
    if (!script) return resolve({ excel: false, why: 'This page does not load Office.js' })
    script.addEventListener('load', ask)
    script.addEventListener('error', () => resolve({ excel: false, why: NOT_LOADED }))
  })
}

const NOT_LOADED = 'Office.js could not be loaded'

/** Why there is no answer yet. A script that failed before this code ran leaves no trace but its absence. */
export const noAnswerYet = (): string =>
  typeof Office === 'undefined' ? NOT_LOADED : 'Excel has not answered yet'
