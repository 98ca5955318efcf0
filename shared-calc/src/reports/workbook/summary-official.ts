import type { Worksheet } from 'exceljs'
import { unitText } from '../../catalogue/shown-figure.js'
import { placedFigures } from '../../evaluation/official-results.js'
import { reference } from './address.js'
import { dress, fonts, formatFor, headingRow, underline } from './styles.js'
import type { SummaryInput } from './summary-input.js'
import { writeName } from './summary-results.js'

const COLUMNS = 6

/** What the method itself reports, in our unit and in that of its users; nothing where it reports no more than the table above. */
export function writeOfficialFigures(
  sheet: Worksheet,
  { method, test, places }: SummaryInput,
  start: number,
): number {
  const figures = placedFigures(method.official ?? [], test)
  if (figures.length === 0) return start
  headingRow(sheet, start, `Figures of ${method.title}`, COLUMNS)
  figures.forEach(({ figure, block, direction }, i) => {
    const row = start + 1 + i
    const from = reference(places.symbol(block.id, figure.symbol))
    const value = block.value(figure.symbol)
    const put = (column: number, formula: string, result: number, unit: string) => {
      dress(sheet.getCell(row, column), {
        font: fonts.bold,
        numFmt: Math.abs(result) < 0.01 && Math.abs(result) >= 1e-4 ? '0.00000' : formatFor(result),
        alignment: { horizontal: 'right' },
      }).value = { formula, result }
      dress(sheet.getCell(row, column + 1), {
        font: fonts.muted,
        alignment: { horizontal: 'left', indent: 1 },
      }).value = unitText(unit)
    }
    writeName(sheet, row, direction ? `${figure.term}, ${direction}` : figure.term)
    put(2, from, value, figure.unit)
    if (figure.customary) {
      const { inOurs, unit } = figure.customary
      put(4, `${from}/${inOurs}`, value / inOurs, unit)
    }
    underline(sheet, row, COLUMNS)
  })
  return start + 1 + figures.length
}
