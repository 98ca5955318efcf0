import type { CellValue, Worksheet } from 'exceljs'
import type { AssessedTest } from '../../assessment/evaluate.js'
import { curveFigures, nameWithSymbol, numberFormat, reportedResults } from '../../catalogue/figures.js'
import { decimalsBeside, unitText } from '../../catalogue/shown-figure.js'
import { capital } from '../../catalogue/words.js'
import type { Figure } from '../../contract/record/index.js'
import { reference } from './address.js'
import type { Places } from './places.js'
import { dress, fills, fonts, headingRow, heightFor, underline } from './styles.js'
import type { SummaryInput } from './summary-input.js'
import { judgedIn } from './summary-verdict.js'

const COLUMNS = 6
/** What fits the column of names on one line. */
const NAME_CHARACTERS = 50
const curveRows = [
  curveFigures.airFlowExponent,
  curveFigures.airLeakageCoefficient,
  curveFigures.rSquared,
  curveFigures.zeroFlowPressure_Pa,
] as const

/** Every quantity in both directions and as their mean, in the method's own terms. */
export function writeResultsTable(
  sheet: Worksheet,
  { evaluation, test, method, places }: SummaryInput,
  start: number,
): number {
  headingRow(sheet, start, 'Results at reference air density', COLUMNS)
  const heads = [
    ...test.runs.map(({ direction }) => direction),
    ...(test.runs.length === 1 ? [''] : []),
    'reported',
    'unit',
    '95 % interval, fit scatter only',
  ]
  heads.forEach((head, i) => {
    dress(sheet.getCell(start, i + 2), {
      font: { ...fonts.bold, size: 9 },
      fill: fills.heading,
      alignment: i < 3 ? { horizontal: 'right' } : { horizontal: 'left', indent: i === 3 ? 1 : 0 },
    }).value = head
  })
  const put = (
    row: number,
    column: number,
    block: string,
    symbol: string,
    value: number,
    numFmt: string,
    bold = false,
  ) => {
    dress(sheet.getCell(row, column), {
      font: bold ? fonts.bold : fonts.body,
      numFmt,
      alignment: { horizontal: 'right' },
    }).value = {
      formula: reference(places.symbol(block, symbol)),
      result: value,
    }
  }
  let row = start + 1
  for (const definition of reportedResults) {
    const { key, unit, block, symbol } = definition
    const numFmt = formatBesideLimit(definition, test)
    const result = evaluation.results[key]
    if (!result) continue
    writeName(sheet, row, capital(method.terms[key as keyof typeof method.terms]))
    evaluation.runs.forEach((run, i) => {
      const figure = run[key]
      if (figure) put(row, i + 2, `run${i + 1}.${block}`, symbol, figure.value, numFmt)
    })
    put(row, 4, `mean.${block}`, symbol, result.value, numFmt, true)
    dress(sheet.getCell(row, 5), { font: fonts.muted, alignment: { horizontal: 'left', indent: 1 } }).value =
      unitText(unit)
    const ends = evaluation.runs.map((run, i) => ({ figure: run[key], id: `run${i + 1}.${block}` }))
    dress(sheet.getCell(row, 6), { font: fonts.small }).value = intervals(
      ends,
      symbol,
      numberFormat(definition),
      places,
    )
    underline(sheet, row, COLUMNS)
    row += 1
  }
  for (const definition of curveRows) {
    const { unit, block, symbol } = definition
    const numFmt = numberFormat(definition)
    if (block === 'curve' && !test.runs.some(({ curve }) => curve.has(symbol))) continue
    dress(sheet.getCell(row, 1), {}).value = capital(
      definition.key === 'zeroFlowPressure_Pa' ? definition.name : nameWithSymbol(definition),
    )
    test.runs.forEach((run, i) => {
      const source = block === 'curve' ? run.curve : run.standard
      put(row, i + 2, source.id, symbol, source.value(symbol), numFmt)
    })
    dress(sheet.getCell(row, 5), { font: fonts.muted, alignment: { horizontal: 'left', indent: 1 } }).value =
      unitText(unit)
    underline(sheet, row, COLUMNS)
    row += 1
  }
  return row
}

/** The name of a figure, over two lines where it is long. */
export function writeName(sheet: Worksheet, row: number, name: string): void {
  dress(sheet.getCell(row, 1), { alignment: { wrapText: true, vertical: 'bottom' } }).value = name
  if (name.length > NAME_CHARACTERS) sheet.getRow(row).height = heightFor(name, NAME_CHARACTERS)
}

/** A judged figure has as many decimals here as in the verdict above it. */
function formatBesideLimit(definition: (typeof reportedResults)[number], { criteria }: AssessedTest): string {
  const usual = numberFormat(definition)
  const judged = criteria.find(({ quantity }) => quantity === definition.key)
  const decimals = judged ? decimalsBeside(judgedIn(judged)) : 0
  return decimals > (usual.split('.')[1]?.length ?? 0) ? `0.${'0'.repeat(decimals)}` : usual
}

/** The interval of each direction as live text: FIXED gives the same in every language of the spreadsheet. */
function intervals(
  ends: readonly { readonly figure: Figure | undefined; readonly id: string }[],
  symbol: string,
  numFmt: string,
  places: Places,
): CellValue {
  // One more decimal than the value, or the two ends of a narrow interval could print the same.
  const decimals = (numFmt.split('.')[1]?.length ?? 0) + 1
  const stem = symbol === 'q_pr' ? 'q' : symbol
  const shown = ends.flatMap(({ figure, id }) => (figure?.ci95 ? [{ ci95: figure.ci95, id }] : []))
  if (shown.length === 0) return null
  const end = (id: string, which: string) =>
    `FIXED(${reference(places.symbol(id, `${stem}_${which}`))},${decimals},TRUE)`
  return {
    formula: shown.map(({ id }) => `${end(id, 'lo')}&"–"&${end(id, 'hi')}`).join('&" / "&'),
    result: shown.map(({ ci95 }) => ci95.map((value) => value.toFixed(decimals)).join('–')).join(' / '),
  }
}
