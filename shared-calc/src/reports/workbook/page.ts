import type { Worksheet } from 'exceljs'
import { heldText } from '../../contract/record/text-field.js'
import { columnLetters } from './address.js'
import { keepHeadings } from './page-breaks.js'

export interface PageSetUp {
  readonly landscape: boolean
  readonly title: string
  readonly lastRow: number
  readonly lastColumn: number
  /** Whether everything must fit one page; otherwise only the width. */
  readonly onePage?: boolean
  /** Rows repeated on every page, as `1:3`. */
  readonly repeat?: string
}

/** A footer holds 255 characters, its codes and doubled signs among them. */
const LONGEST_TITLE = 90

function shortened(title: string): string {
  const line = title.replace(/\s+/g, ' ').trim()
  return line.length > LONGEST_TITLE ? `${line.slice(0, LONGEST_TITLE - 1)}…` : line
}

/** A4, sensible margins, page numbers, and a print area that ends where the sheet does. */
export function setUpPage(
  sheet: Worksheet,
  { landscape, title, lastRow, lastColumn, onePage = false, repeat }: PageSetUp,
): void {
  Object.assign(sheet.pageSetup, {
    paperSize: 9,
    orientation: landscape ? 'landscape' : 'portrait',
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: onePage ? 1 : 0,
    horizontalCentered: true,
    margins: { left: 0.5, right: 0.5, top: 0.55, bottom: 0.6, header: 0.3, footer: 0.3 },
    // With rows marked so: exceljs writes A1:F50 as $A1:$F50, which LibreOffice takes for no print area at all.
    printArea: `A$1:${columnLetters(lastColumn)}$${lastRow}`,
    ...(repeat && { printTitlesRow: repeat }),
  })
  if (!onePage) keepHeadings(sheet, { landscape, lastRow, lastColumn, repeat })
  // In headers and footers & begins a code, so text must double it.
  const text = heldText(shortened(title)).replaceAll('&', '&&')
  sheet.headerFooter.oddFooter = `&L&8${text}&C&8Draughtbook&R&8page &P of &N`
}
