import type { CellValue, Worksheet } from 'exceljs'
import { outcomeWords } from '../../catalogue/words.js'
import type { Verdict } from '../../contract/record/index.js'
import { governingCriterion } from '../../evaluation/verdict.js'
import type { WorkedCriterion } from '../../evaluation/work/worked-test.js'
import { reference } from './address.js'
import { dress, fills, fonts, headingRow } from './styles.js'
import type { SummaryInput } from './summary-input.js'

const COLUMNS = 6

/** Result against the target, margin, margin after ageing, leakage still to seal: all by reference to Working. */
export function writeVerdict(sheet: Worksheet, input: SummaryInput, start: number): number {
  const { evaluation, test, places, check } = input
  const { verdict } = evaluation
  headingRow(sheet, start, 'Verdict', COLUMNS)
  const { target } = verdict
  const row = start + 1
  if (!target || test.criteria.length === 0) {
    dress(sheet.getCell(row, 1), { font: fonts.verdict, fill: fills.plain }).value = 'No target was set'
    sheet.mergeCells(row, 1, row, COLUMNS)
    sheet.getRow(row).height = 24
    return row + 1
  }
  const cell = (block: string, symbol: string) => reference(places.symbol(block, symbol))
  const margins = test.criteria.map(({ value }) => cell(value.id, 'M'))
  sheet.getRow(row).height = 26
  sheet.mergeCells(row, 1, row, 2)
  dress(sheet.getCell(row, 1), {
    font: fonts.verdict,
    fill: fills.plain,
    alignment: { vertical: 'middle', horizontal: 'center' },
  }).value = {
    formula: `IF(${check.invalidating}>0,"NOT VALID",IF(MIN(${margins.join(',')})>=0,"MEETS","FAILS"))`,
    result: outcomeWords[verdict.outcome].toUpperCase(),
  }
  colourBox(sheet, row)
  sheet.mergeCells(row, 3, row, COLUMNS)
  dress(sheet.getCell(row, 3), { alignment: { vertical: 'middle', wrapText: true } }).value =
    targetText(verdict)
  let next = row + 1
  const { criteria } = test
  criteria.forEach((criterion, i) => {
    const { unit, limit } = verdict.criteria[i] ?? { unit: '', limit: 0 }
    const id = criterion.value.id
    const shownUnit = printed(unit)
    line(
      sheet,
      next,
      `${quantityText(criterion)}, ${judgedWord(verdict, i)}`,
      cell(id, 'v'),
      criterion.value.value('v'),
      shownUnit,
      { formula: `"limit "&${cell(id, 'L')}&" ${shownUnit}"`, result: `limit ${limit} ${shownUnit}` },
    )
    line(sheet, next + 1, 'Margin to the limit', cell(id, 'M'), criterion.value.value('M'), shownUnit, '')
    next += 2
  })
  const main = governingCriterion(test)
  if (!main) return next
  main.ageing.forEach((age, i) => {
    const entry = verdict.ageing[i]
    line(
      sheet,
      next,
      `Margin if leakage increases by ${Math.round(age.value('g') * 100)} %`,
      cell(age.id, 'M_g'),
      age.value('M_g'),
      printed(target.unit),
      `first year; ${entry?.source ?? ''}`,
    )
    next += 1
  })
  const seals = criteria.map(({ toSeal }) => cell(toSeal.id, 'A_s'))
  line(
    sheet,
    next,
    'Leakage still to seal',
    seals.length === 1 ? `${seals[0]}` : `MAX(${seals.join(',')})`,
    verdict.leakageToSeal_cm2 ?? 0,
    'cm²',
    `sharp-edged hole at ${main.referencePressure_Pa} Pa`,
  )
  return next + 1
}

function line(
  sheet: Worksheet,
  row: number,
  label: string,
  formula: string,
  result: number,
  unit: string,
  remark: CellValue,
): void {
  dress(sheet.getCell(row, 1), {}).value = label
  dress(sheet.getCell(row, 2), {
    font: fonts.bold,
    numFmt: '0.00',
    alignment: { horizontal: 'right' },
  }).value = { formula, result }
  dress(sheet.getCell(row, 3), { font: fonts.muted, alignment: { horizontal: 'left', indent: 1 } }).value =
    unit
  sheet.mergeCells(row, 4, row, COLUMNS)
  dress(sheet.getCell(row, 4), { font: fonts.muted }).value = remark
}

/** The box takes its colour from its own word, which is live. */
function colourBox(sheet: Worksheet, row: number): void {
  const colours = [
    ['MEETS', 'FFDDF3E4'],
    ['FAILS', 'FFFBDCDC'],
  ] as const
  sheet.addConditionalFormatting({
    ref: `A${row}:B${row}`,
    rules: colours.map(([word, argb], i) => ({
      type: 'expression',
      formulae: [`$A$${row}="${word}"`],
      priority: 10 + i,
      style: { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb }, fgColor: { argb } } },
    })),
  })
}

/** n50 as it is; n_pr with its reference pressure in words. */
const quantityText = ({ quantity, referencePressure_Pa }: WorkedCriterion): string =>
  quantity.replace('_pr', ` at ${referencePressure_Pa} Pa`)

/** m3/h as printed: m³/h. */
export const printed = (unit: string): string => unit.replace(/m3/g, 'm³').replace(/m2/g, 'm²')

function targetText({ target, outcome }: Verdict): string {
  if (!target) return ''
  const reason =
    outcome === 'not valid'
      ? ' The findings below explain why the test is not valid. The figures are shown for information.'
      : ''
  const rounding =
    target.decimalPlaces === undefined
      ? ''
      : ` Compared after rounding to ${target.decimalPlaces} decimal places, as the target requires.`
  return `Target: ${target.label} (${target.source}).${rounding}${reason}`
}

const judgedWord = (verdict: Verdict, i: number): string =>
  ({
    mean: 'mean of both directions',
    'one direction': 'one direction',
    'worse direction': 'worse of both directions',
  })[verdict.criteria[i]?.judged ?? 'mean']
