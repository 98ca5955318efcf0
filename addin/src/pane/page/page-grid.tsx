import { useState } from 'preact/hooks'
import { usePageHost } from '../use-changes.js'
import { CellBar } from './cell-bar.js'
import type { PageTests } from './page-tests.js'
import { SaveLog } from './save-log.js'
import { SheetGrid } from './sheet-grid.js'

/** The plain page's stand-in for a spreadsheet: one workbook, its sheets, a grid to pick from and to correct in. */
export function PageGrid({ tests }: { tests: PageTests }) {
  const { host } = tests
  usePageHost(host)
  const [folded, setFolded] = useState(false)
  const { book, selected } = host
  const sheet = book?.sheets.find(({ name }) => name === selected?.sheet)
  if (!book && host.hasWorkbook)
    return (
      <section class="page-grid" aria-label="Test log">
        <p class="hint grid-hint" role="status">
          Reading the log …
        </p>
      </section>
    )
  if (!book || !sheet || !selected) return null
  return (
    <section class={`page-grid${folded ? ' folded' : ''}`} aria-label="Test log">
      <div class="grid-bar">
        <span class="book-name">{book.name}</span>
        <button type="button" class="fold-sheet" aria-expanded={!folded} onClick={() => setFolded(!folded)}>
          {folded ? 'Show the sheet' : 'Hide the sheet'}
        </button>
      </div>
      <div class="grid-room">
        <CellBar host={host} sheet={sheet} area={selected.area} />
        <SheetGrid key={sheet.name} host={host} sheet={sheet} area={selected.area} />
        <div class="tabs" role="tablist" aria-label="Sheets">
          {book.sheets
            .filter(({ hidden }) => !hidden)
            .map(({ name }) => (
              <button
                type="button"
                role="tab"
                key={name}
                aria-selected={name === sheet.name}
                onClick={() => host.select(name, { top: 1, left: 1, bottom: 1, right: 1 })}
              >
                {name}
              </button>
            ))}
        </div>
        <SaveLog tests={tests} />
        <p class="hint grid-hint">
          {sheet.hasFormulas
            ? 'This sheet holds formulas; a change made here does not recalculate them. '
            : ''}
          Changes are kept with the test; the file on disk stays as it is.
        </p>
        {book.opened.findings.map(({ message }) => (
          <p class="hint grid-hint" key={message}>
            {message}
          </p>
        ))}
      </div>
    </section>
  )
}
