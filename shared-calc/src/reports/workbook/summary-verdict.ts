import type { CellValue, Worksheet } from 'exceljs'
import { decimalsBeside, type Judged, limitedName, unitText } from '../../catalogue/shown-figure.js'
import type { Verdict } from '../../contract/record/index.js'
import { governingCriterion } from '../../evaluation/verdict.js'
import type { WorkedCriterion } from '../../evaluation/work/worked-test.js'
import { reference } from './address.js'
import { PROBABILITY_FORMAT } from './live-cell.js'
import { dress, fills, fonts, headingRow, heightFor } from './styles.js'
import { SUMMARY_COLUMNS as COLUMNS, type SummaryInput } from './summary-input.js'

export const VERDICT_WORDS = { meets: 'MEETS', misses: 'FAILS', invalid: 'NOT VALID' } as const

/** The colour of the box by the word it begins with. */
export const VERDICT_COLOURS = [
  [VERDICT_WORDS.meets, 'FFDDF3E4'],
  [VERDICT_WORDS.misses, 'FFFBDCDC'],
  [VERDICT_WORDS.invalid, 'FFFBE8C8'],
] as const

/** Result against the target in one line, then margin, ageing, uncertainty and leakage to seal, all by reference. */
export function writeVerdict(sheet: Worksheet, input: SummaryInput, start: number): number {
  const { evaluation, test } = input
  headingRow(sheet, start, 'Verdict', COLUMNS)
  const main = governingCriterion(test)
  if (!evaluation.verdict.target || !main) return writeNoTarget(sheet, input, start + 1)
  writeBanner(sheet, input, main, start + 1)
  const writer = new LineWriter(sheet, start + 3)
  for (const criterion of test.criteria) writeCriterion(writer, input, criterion)
  writeUncertainty(writer, input, main)
  writeAgeing(writer, input, main)
  writeToSeal(writer, input, main)
  return writer.row
}

/** Without a target there is no verdict, but an invalid test is still marked. */
function writeNoTarget(sheet: Worksheet, { check, evaluation }: SummaryInput, row: number): number {
  const invalid = evaluation.findings.some(({ severity }) => severity === 'invalidates')
  const none = 'No target was set'
  const says = `${VERDICT_WORDS.invalid}. ${none}.`
  sheet.mergeCells(row, 1, row, COLUMNS)
  sheet.getRow(row).height = 24
  dress(sheet.getCell(row, 1), { font: fonts.verdict, fill: fills.plain }).value = {
    formula: `IF(${check.invalidating}>0,"${says}","${none}")`,
    result: invalid ? says : none,
  }
  colourBox(sheet, row)
  return row + 1
}

/** The verdict's word, and beside it the value that decides, its limit and its margin. */
function writeBanner(
  sheet: Worksheet,
  { evaluation: { verdict }, test, places, check }: SummaryInput,
  main: WorkedCriterion,
  row: number,
): void {
  const cell = (block: string, symbol: string) => reference(places.symbol(block, symbol))
  const margins = test.criteria.map(({ value }) => cell(value.id, 'M'))
  sheet.getRow(row).height = 34
  dress(sheet.getCell(row, 1), {
    font: { ...fonts.verdict, size: 20 },
    fill: fills.plain,
    alignment: { vertical: 'middle', horizontal: 'center' },
  }).value = {
    formula: `IF(${check.invalidating}>0,"${VERDICT_WORDS.invalid}",IF(MIN(${margins.join(',')})>=0,"${VERDICT_WORDS.meets}","${VERDICT_WORDS.misses}"))`,
    result:
      verdict.outcome === 'not valid'
        ? VERDICT_WORDS.invalid
        : VERDICT_WORDS[verdict.outcome as 'meets' | 'misses'],
  }
  colourBox(sheet, row)
  sheet.mergeCells(row, 2, row, COLUMNS)
  const { id } = main.value
  const { value, limit, margin } = judgedIn(main)
  const decimals = decimalsBeside({ value, limit, margin })
  const unit = unitText(verdict.target?.unit ?? '')
  const fixed = (symbol: string) => `FIXED(${cell(id, symbol)},${decimals},TRUE)`
  const name = quantityText(main)
  dress(sheet.getCell(row, 2), {
    font: { ...fonts.verdict, size: 13 },
    fill: fills.plain,
    alignment: { vertical: 'middle', indent: 1 },
  }).value = {
    formula: `"${name} "&${fixed('v')}&" ${unit}   limit "&${cell(id, 'L')}&"   margin "&${fixed('M')}`,
    result: `${name} ${value.toFixed(decimals)} ${unit}   limit ${limit}   margin ${margin.toFixed(decimals)}`,
  }
  sheet.mergeCells(row + 1, 1, row + 1, COLUMNS)
  const text = targetText(verdict)
  dress(sheet.getCell(row + 1, 1), { alignment: { vertical: 'top', wrapText: true } }).value = text
  sheet.getRow(row + 1).height = heightFor(text, 125)
}

function writeCriterion(
  writer: LineWriter,
  { evaluation: { verdict }, test, places }: SummaryInput,
  criterion: WorkedCriterion,
): void {
  const i = test.criteria.indexOf(criterion)
  const { value: block } = criterion
  const unit = unitText(verdict.criteria[i]?.unit ?? '')
  const { value, limit, margin } = judgedIn(criterion)
  const decimals = decimalsBeside({ value, limit, margin })
  const cell = (symbol: string) => reference(places.symbol(block.id, symbol))
  writer.line(
    `${quantityText(criterion)}, ${judgedWord(verdict, i)}`,
    { formula: cell('v'), result: value, decimals },
    unit,
    { formula: `"limit "&${cell('L')}&" ${unit}"`, result: `limit ${limit} ${unit}` },
  )
  writer.line('Margin to the limit', { formula: cell('M'), result: margin, decimals }, unit)
}

/** A criterion's value as it is compared. */
export const judgedIn = ({ value }: WorkedCriterion): Judged => ({
  value: value.value('v'),
  limit: value.value('L'),
  margin: value.value('M'),
})

/** The 95 % interval of the whole budget and the probability of meeting the limit, where the test has a budget. */
function writeUncertainty(
  writer: LineWriter,
  { test, places, evaluation }: SummaryInput,
  main: WorkedCriterion,
): void {
  const decision = test.uncertainty?.decisions.find(({ quantity }) => quantity === main.quantity)
  if (!decision) return
  const { budget, block } = decision
  const cell = (symbol: string) => reference(places.symbol(budget.block.id, symbol))
  const unit = unitText(evaluation.verdict.target?.unit ?? '')
  const decimals = decimalsBeside(judgedIn(main))
  writer.line(
    'Expanded uncertainty (95 %)',
    { formula: cell('U'), result: budget.block.value('U'), decimals },
    unit,
    'all causes of the budget, see sheet Uncertainty',
  )
  writer.line(
    'Probability of meeting the limit',
    {
      formula: reference(places.symbol(block.id, 'P_m')),
      result: block.value('P_m'),
      format: PROBABILITY_FORMAT,
    },
    '',
  )
}

function writeAgeing(
  writer: LineWriter,
  { evaluation: { verdict }, places }: SummaryInput,
  main: WorkedCriterion,
): void {
  main.ageing.forEach((age, i) => {
    writer.line(
      `Margin of ${quantityText(main)} ${verdict.ageing[i]?.label ?? ''}`,
      {
        formula: reference(places.symbol(age.id, 'M_g')),
        result: age.value('M_g'),
        decimals: decimalsBeside({
          value: age.value('v_g'),
          limit: main.value.value('L'),
          margin: age.value('M_g'),
        }),
      },
      unitText(verdict.target?.unit ?? ''),
      `leakage up by ${Math.round(age.value('g') * 100)} % (${verdict.ageing[i]?.source ?? ''})`,
    )
  })
}

function writeToSeal(
  writer: LineWriter,
  { evaluation: { verdict }, test, places }: SummaryInput,
  main: WorkedCriterion,
): void {
  const seals = test.criteria.map(({ toSeal }) => reference(places.symbol(toSeal.id, 'A_s')))
  const area = verdict.leakageToSeal_cm2 ?? 0
  writer.line(
    'Still to seal',
    {
      formula: seals.length === 1 ? `${seals[0]}` : `MAX(${seals.join(',')})`,
      result: area,
      decimals: area < 10 && area > 0 ? 1 : 0,
    },
    'cm²',
    area === 0 ? undefined : `area of one sharp-edged hole at ${main.referencePressure_Pa} Pa`,
  )
}

interface Shown {
  readonly formula: string
  readonly result: number
  readonly decimals?: number
  readonly format?: string
}

/** One line of the verdict: what, value, unit, remark. */
class LineWriter {
  constructor(
    private readonly sheet: Worksheet,
    public row: number,
  ) {}

  line(
    label: string,
    { formula, result, decimals = 2, format }: Shown,
    unit: string,
    remark?: CellValue,
  ): void {
    const { sheet, row } = this
    dress(sheet.getCell(row, 1), {}).value = label
    dress(sheet.getCell(row, 2), {
      font: fonts.bold,
      numFmt: format ?? (decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`),
      alignment: { horizontal: 'right' },
    }).value = { formula, result }
    if (unit)
      dress(sheet.getCell(row, 3), {
        font: fonts.muted,
        alignment: { horizontal: 'left', indent: 1 },
      }).value = unit
    if (remark !== undefined) {
      sheet.mergeCells(row, 4, row, COLUMNS)
      dress(sheet.getCell(row, 4), { font: fonts.muted }).value = remark
    }
    this.row += 1
  }
}

/** The box takes its colour from its own word, which is live. */
function colourBox(sheet: Worksheet, row: number): void {
  sheet.addConditionalFormatting({
    ref: `A${row}:F${row}`,
    rules: VERDICT_COLOURS.map(([word, argb], i) => ({
      type: 'expression',
      formulae: [`LEFT($A$${row},${word.length})="${word}"`],
      priority: 10 + i,
      style: { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb }, fgColor: { argb } } },
    })),
  })
}

const quantityText = ({ quantity, referencePressure_Pa }: WorkedCriterion): string =>
  limitedName(quantity, referencePressure_Pa)

function targetText({ target, outcome }: Verdict): string {
  if (!target) return ''
  const reason =
    outcome === 'not valid'
      ? ' The findings below say why the test is not valid. The results are shown anyway.'
      : ''
  const rounding =
    target.decimalPlaces === undefined
      ? ''
      : ` The target compares values rounded to ${target.decimalPlaces} decimal ${target.decimalPlaces === 1 ? 'place' : 'places'}.`
  return `Target: ${target.label} (${target.source}).${rounding}${reason}`
}

const judgedWord = (verdict: Verdict, i: number): string =>
  ({
    mean: 'mean of both directions',
    'one direction': 'one direction',
    'worse direction': 'worse of both directions',
  })[verdict.criteria[i]?.judged ?? 'mean']
