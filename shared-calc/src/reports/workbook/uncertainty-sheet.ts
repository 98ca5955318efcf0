import type { Workbook } from 'exceljs'
import { unitText } from '../../catalogue/shown-figure.js'
import type { Evaluation } from '../../contract/record/index.js'
import { sourceText } from '../../engine/index.js'
import { defaultUncertainties } from '../../uncertainty/defaults.js'
import type { WorkedBudget, WorkedUncertainty } from '../../uncertainty/worked-uncertainty.js'
import { live, PROBABILITY_FORMAT, type Shown, writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fonts, headingRow } from './styles.js'

export const UNCERTAINTY = 'Uncertainty'
const COLUMNS = 8
const WIDE = { columns: COLUMNS, perRow: 120 }

/**
 * Uncertainty: the decision in words, then the budget of each figure with its contributions, all by reference to
 * Working.
 */
export function writeUncertaintySheet(
  workbook: Workbook,
  evaluation: Evaluation,
  worked: WorkedUncertainty,
  places: Places,
): void {
  const sheet = workbook.addWorksheet(UNCERTAINTY, { views: [{ showGridLines: false }] })
  sheet.columns = [44, 13, 12, 13, 13, 10, 12, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Uncertainty'
  let row = 3
  if (worked.decisions.length > 0) {
    headingRow(sheet, row, 'Against the target', COLUMNS)
    row = writeTable(
      sheet,
      row + 1,
      [
        { head: 'quantity', align: 'left' },
        { head: 'value' },
        { head: 'limit' },
        { head: 'probability\nof meeting' },
        { head: 'accept\nup to' },
      ],
      worked.decisions.map(({ quantity, block, met }) => [
        quantity,
        live(places, block, 'v', '0.000'),
        live(places, block, 'L', '0.00'),
        live(places, met.block, met.symbol, PROBABILITY_FORMAT),
        live(places, block, 'L_a', '0.000'),
      ]),
    )
    for (const { words } of evaluation.decision ?? []) row = writeLine(sheet, row, words, WIDE)
    row += 1
  }
  headingRow(sheet, row, 'Figures with their full uncertainty', COLUMNS)
  row = writeTable(
    sheet,
    row + 1,
    [
      { head: 'figure', align: 'left' },
      { head: 'value' },
      { head: 'unit', align: 'left' },
      { head: 'standard\nuncertainty' },
      { head: 'expanded,\n95 %' },
      { head: 'factor' },
      { head: 'lower\nend' },
      { head: 'upper\nend' },
    ],
    worked.budgets.map(({ label, unit, block }) => [
      label,
      live(places, block, 'v', '0.000'),
      unitText(unit),
      live(places, block, 'u_1', '0.000'),
      live(places, block, 'U', '0.0 %'),
      live(places, block, 'k', '0.00'),
      live(places, block, 'v_lo', '0.000'),
      live(places, block, 'v_hi', '0.000'),
    ]),
  )
  for (const budget of worked.budgets) {
    headingRow(sheet, row + 1, `Budget of ${budget.label}`, COLUMNS)
    row = writeTable(
      sheet,
      row + 2,
      [
        { head: 'cause', align: 'left' },
        { head: 'standard\nuncertainty' },
        { head: 'expected\nsize' },
        { head: 'unit', align: 'left' },
        { head: 'relative\nsensitivity' },
        { head: 'contribution' },
        { head: 'share' },
      ],
      rowsOf(budget, places),
    )
  }
  headingRow(sheet, row + 1, 'Default values used', COLUMNS)
  row += 2
  for (const { input, value, source } of worked.defaults) {
    const { term, unit } = defaultUncertainties[input]
    const amount =
      unit === '1' ? `${Number((value * 100).toPrecision(3))} %` : `${Number(value.toPrecision(3))} ${unit}`
    row = writeLine(sheet, row, `${term}: ${amount}. ${sourceText(source)}`, WIDE)
  }
  row = writeLine(
    sheet,
    row + 1,
    'Contributions are relative to the figure and add by their squares. A cause that all readings share is counted once for the test. The scatter of the readings is counted as the instruments explain it, with any scatter found beyond that. A cause that can act in one direction only has an expected size: it does not change the figure, but the interval allows for it. The verdict is that of the method: nothing here replaces it.',
    { ...WIDE, font: fonts.muted },
  )
  setUpPage(sheet, { landscape: false, title: UNCERTAINTY, lastRow: row, lastColumn: COLUMNS })
}

const rowsOf = ({ rows, block }: WorkedBudget, places: Places): (Shown | string)[][] =>
  rows.map(({ name, unit, a }, i) => [
    name,
    live(places, block, 'u', '0.0000', i),
    a.origin.kind === 'block' ? live(places, block, 'a', '0.0000', i) : '',
    unit === '1' ? '' : unit,
    live(places, block, 'c', '0.0000', i),
    live(places, block, 'd', '0.00 %', i),
    live(places, block, 'f', '0.0 %', i),
  ])
