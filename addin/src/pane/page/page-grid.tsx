import type { PageHost } from '../../host/page/page-host.js'
import type { TestStore } from '../one-test/store.js'
import { CellBar } from './cell-bar.js'
import { OpenFile } from './open-file.js'
import { SheetGrid } from './sheet-grid.js'
import { usePageHost } from './use-page-host.js'

interface PageGridProps {
  host: PageHost
  store: TestStore
}

/** The plain page's stand-in for a spreadsheet: one workbook, its sheets, a grid to pick from and to correct in. */
export function PageGrid({ host, store }: PageGridProps) {
  usePageHost(host)
  const { book, selected } = host
  const sheet = book?.sheets.find(({ name }) => name === selected?.sheet)
  return (
    <section class="page-grid" aria-label="Test log">
      <div class="grid-bar">
        <OpenFile host={host} store={store} />
        {book ? <span class="book-name">{book.name}</span> : null}
      </div>
      {book && sheet && selected ? (
        <>
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
          {sheet.hasFormulas ? (
            <p class="hint grid-hint">
              This sheet holds formulas. A change made here does not recalculate them; the file on disk is
              never changed.
            </p>
          ) : (
            <p class="hint grid-hint">
              Changes made here stay on this page; the file on disk is never changed.
            </p>
          )}
          {book.opened.findings.map(({ message }) => (
            <p class="hint grid-hint" key={message}>
              {message}
            </p>
          ))}
        </>
      ) : (
        <div class="no-book">
          <p>Open a test log (.xlsx, .xlsm, .ods or .csv) to pick its readings.</p>
          <p class="hint">
            The file is read on this computer. Only the figures of the test go to the service that serves this
            page.
          </p>
        </div>
      )}
    </section>
  )
}
