import { cpSync, readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'

/** Where Excel's add-ins load Office.js from unless a firm chooses to host the package itself. */
export const MICROSOFT_OFFICE_JS = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js'

/**
 * Puts the address of office.js into pane.html.
 * @param choice `self` copies the pinned npm package (Microsoft's own licence) beside the pane; nothing or
 * anything else leaves Microsoft's address
 */
export function officeJs(choice: string | undefined): Plugin {
  const self = choice === 'self'
  return {
    name: 'draughtbook:office-js',
    transformIndexHtml: {
      order: 'pre',
      handler: (html) => html.replace('%OFFICE_JS%', self ? './office-js/office.js' : MICROSOFT_OFFICE_JS),
    },
    writeBundle(options) {
      if (self && options.dir) copyPackage(join(options.dir, 'office-js'))
    },
  }
}

/** Copies what Excel asks for: the loader, the Excel host files and the words in each language. */
function copyPackage(target: string): void {
  const source = join(
    dirname(fileURLToPath(import.meta.resolve('@microsoft/office-js/package.json'))),
    'dist',
  )
  const wanted = readdirSync(source, { withFileTypes: true }).filter(
    (entry) =>
      entry.isDirectory() ||
      /^(office|excel-.*|excel\w*-15.*|o15apptofilemappingtable|custom-functions-runtime|es6-promise)\.js$/.test(
        entry.name,
      ),
  )
  for (const { name } of wanted) cpSync(join(source, name), join(target, name), { recursive: true })
}
