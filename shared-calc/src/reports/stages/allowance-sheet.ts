import type { Worksheet } from 'exceljs'
import { siteStages, type WorkedStage, type WorkedStages } from '../../assessment/stages/work-stages.js'
import { shortNames } from '../../catalogue/short-names.js'
import { dayInWords } from '../../catalogue/words.js'
import { columnLetters, reference } from '../workbook/address.js'
import { live, PROBABILITY_FORMAT, type Shown } from '../workbook/live-cell.js'
import { setUpPage } from '../workbook/page.js'
import type { Places } from '../workbook/places.js'
import { dress, fills, fonts, heightFor, underline, wrap } from '../workbook/styles.js'

export const ALLOWANCE = 'Allowance'
export const SHARES = 3
export const CONFIDENCE = 4
export const ALLOWANCE_HEAD = 7
/** Columns that other sheets and the working refer to. */
export const columns = {
  plot: 1,
  date: 3,
  allowed: 5,
  measured: 6,
  shareUsed: 8,
  probability: 11,
  decision: 12,
  limit: 14,
  basis: 15,
  figure: 16,
  file: 17,
} as const
/** Columns that are printed; inputs of the working and file names are to the right of them. */
const PRINTED = 13

/** Where a stage's share of the target stands; the probability needed is below the first. */
export const shareColumn = (stage: number): number => 4 + 2 * stage

/** Where the inputs of the working stand. */
export function placeAllowance({ stages }: WorkedStages, places: Places): void {
  siteStages.forEach((stage, i) => {
    places.placeField(`shares.${stage}`, { sheet: ALLOWANCE, column: shareColumn(i), row: SHARES })
  })
  for (const { index } of stages)
    for (const key of ['limit', 'basis', 'figure'] as const)
      places.placeField(`tests[${index}].${key}`, {
        sheet: ALLOWANCE,
        column: columns[key],
        row: ALLOWANCE_HEAD + 1 + index,
      })
}

const heads: readonly (readonly [string, number])[] = [
  ['Plot', 24],
  ['Stage', 13],
  ['Date', 18],
  ['target\nm³/h', 9],
  ['allowed so\nfar, m³/h', 10],
  ['measured\nm³/h', 10],
  ['used since\nstage before', 11],
  ['share of\ntarget used', 10],
  ['left\nm³/h', 9],
  ['left\ncm²', 9],
  ['probability of\nbeing within', 14],
  ['Next trade', 11],
  ['Why', 28],
  ['limit of\nthe figure', 9],
  ['basis of limit\nm³, m² or 1', 12],
  ['measured\nfigure', 10],
  ['File', 30],
]

/** One row a test: what is allowed, used and left, and whether the next trade may start. */
export function writeAllowanceSheet(sheet: Worksheet, worked: WorkedStages, places: Places): void {
  sheet.columns = heads.map(([, width]) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Leakage allowed and used, stage by stage'
  dress(sheet.getCell(SHARES, 1), { font: fonts.muted }).value = 'share of the target that may be used up to'
  siteStages.forEach((stage, i) => {
    dress(sheet.getCell(SHARES, shareColumn(i) - 1), {
      font: fonts.muted,
      alignment: { horizontal: 'right' },
    }).value = stage
    dress(sheet.getCell(SHARES, shareColumn(i)), { numFmt: '0 %', fill: fills.given }).value =
      worked.shares[stage]
  })
  dress(sheet.getCell(CONFIDENCE, 1), { font: fonts.muted }).value = 'probability needed'
  dress(sheet.getCell(CONFIDENCE, shareColumn(0)), { numFmt: '0 %', fill: fills.given }).value =
    worked.confidence
  dress(sheet.getCell(5, 1), { font: fonts.small }).value =
    'Shares and probability are common practice, no source. Change the yellow cells to set your own.'
  sheet.getRow(ALLOWANCE_HEAD).height = 28
  heads.forEach(([head], i) => {
    dress(sheet.getCell(ALLOWANCE_HEAD, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: {
        wrapText: true,
        vertical: 'bottom',
        ...sideOf(i),
      },
    }).value = head
  })
  const names = shortNames(worked.stages.map(({ test }) => test.file))
  for (const stage of worked.stages) writeRow(sheet, stage, names, places)
  const last = ALLOWANCE_HEAD + Math.max(1, worked.stages.length)
  sheet.autoFilter = `A${ALLOWANCE_HEAD}:${columnLetters(heads.length)}${last}`
  setUpPage(sheet, {
    landscape: true,
    title: 'Leakage allowed and used, stage by stage',
    lastRow: last,
    lastColumn: PRINTED,
    repeat: `${ALLOWANCE_HEAD}:${ALLOWANCE_HEAD}`,
  })
}

/** Numbers to the right, texts to the left and clear of the number before them. @param i - column, counted from 0 */
function sideOf(i: number): { horizontal: 'left' | 'right'; indent: number } {
  const text = i < 3 || i === columns.decision - 1 || i === columns.decision || i === heads.length - 1
  return text ? { horizontal: 'left', indent: i < 3 ? 0 : 1 } : { horizontal: 'right', indent: 0 }
}

function writeRow(
  sheet: Worksheet,
  stage: WorkedStage,
  names: ReadonlyMap<string, string>,
  places: Places,
): void {
  const row = ALLOWANCE_HEAD + 1 + stage.index
  const { test, target, allowance, use, probability } = stage
  const measured = allowance.input('q_s')
  const measuredCell =
    measured && 'origin' in measured && typeof measured.origin !== 'function'
      ? places.origin(measured.origin)
      : undefined
  const cells: (Shown | string | number | undefined)[] = [
    stage.plot,
    stage.stage,
    dayInWords(test.record.test.date),
    live(places, target, 'q_t'),
    live(places, allowance, 'q_a'),
    measuredCell && {
      value: {
        formula: reference(measuredCell),
        result: measured && 'value' in measured ? measured.value : 0,
      },
      numFmt: '0.0',
    },
    use && live(places, use, 'q_u', '+0.0;-0.0;0.0'),
    live(places, allowance, 's_u', '0 %'),
    live(places, allowance, 'q_l', '+0.0;-0.0;0.0'),
    live(places, allowance, 'A_l', '+0;-0;0'),
    live(places, probability, 'P_s', PROBABILITY_FORMAT),
    decisionOf(stage, row),
    whyOf(stage, row),
    { value: test.largestFigure, numFmt: '0.00' },
    { value: test.basis, numFmt: '0.0' },
    { value: test.decision.budget.block.value('v'), numFmt: '0.000' },
    names.get(test.file) ?? test.file,
  ]
  cells.forEach((shown, i) => {
    const { value, numFmt } =
      shown !== null && typeof shown === 'object' ? shown : { value: shown, numFmt: undefined }
    dress(sheet.getCell(row, i + 1), {
      ...(numFmt && { numFmt }),
      alignment:
        sideOf(i).horizontal === 'right' ? { ...sideOf(i), vertical: 'top' } : { ...wrap, ...sideOf(i) },
    }).value = value ?? null
  })
  sheet.getRow(row).height = Math.max(heightFor(stage.plot, 24), heightFor(stage.why ?? OVER, 30))
  underline(sheet, row, heads.length)
}

/** Live where the figures decide; as found where the test is not valid, altered, or the acceptance test. */
const decisionOf = ({ decision, why, stage }: WorkedStage, row: number): Shown =>
  why !== undefined || stage === 'acceptance'
    ? { value: decision }
    : {
        value: {
          formula: `IF(${letter('probability')}${row}>=$D$${CONFIDENCE},"go","stop")`,
          result: decision,
        },
      }

const letter = (column: keyof typeof columns): string => columnLetters(columns[column])

const OVER = 'over the allowance'
const UNSURE = 'within, but not surely enough'

/** Why the next trade must wait; live where the figures decide. */
function whyOf({ decision, why, stage, allowance }: WorkedStage, row: number): Shown {
  if (why !== undefined || stage === 'acceptance') return { value: why ?? null }
  const measured = allowance.input('q_s')
  const over = measured && 'value' in measured && measured.value > allowance.value('q_a')
  return {
    value: {
      formula: `IF(${letter('decision')}${row}="go","",IF(${letter('measured')}${row}>${letter('allowed')}${row},"${OVER}","${UNSURE}"))`,
      result: decision === 'go' ? '' : over ? OVER : UNSURE,
    },
  }
}
