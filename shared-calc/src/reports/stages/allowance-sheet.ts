import type { Worksheet } from 'exceljs'
import { siteStages, type WorkedStage, type WorkedStages } from '../../assessment/stages/work-stages.js'
import { shortNames } from '../../catalogue/short-names.js'
import { reference } from '../workbook/address.js'
import { live, type Shown } from '../workbook/live-cell.js'
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
  limit: 4,
  basis: 5,
  figure: 6,
  shareUsed: 11,
  decision: 15,
  file: 17,
} as const

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
  ['Date', 11],
  ['Limit', 9],
  ['basis of limit\nm³, m² or 1', 11],
  ['measured\nfigure', 10],
  ['target\nm³/h', 9],
  ['allowed so\nfar, m³/h', 10],
  ['measured\nm³/h', 10],
  ['used since\nstage before', 11],
  ['share of\ntarget used', 10],
  ['left\nm³/h', 9],
  ['left\ncm²', 8],
  ['probability of\nbeing within', 11],
  ['Next trade', 11],
  ['Why', 20],
  ['File', 18],
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
    dress(sheet.getCell(SHARES, shareColumn(i)), { numFmt: '0%', fill: fills.given }).value =
      worked.shares[stage]
  })
  dress(sheet.getCell(CONFIDENCE, 1), { font: fonts.muted }).value = 'probability needed'
  dress(sheet.getCell(CONFIDENCE, shareColumn(0)), { numFmt: '0%', fill: fills.given }).value =
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
        horizontal: i >= 3 && i <= 13 ? 'right' : 'left',
        indent: i === columns.decision - 1 ? 1 : 0,
      },
    }).value = head
  })
  const names = shortNames(worked.stages.map(({ test }) => test.file))
  for (const stage of worked.stages) writeRow(sheet, stage, names, places)
  const last = ALLOWANCE_HEAD + Math.max(1, worked.stages.length)
  sheet.autoFilter = `A${ALLOWANCE_HEAD}:Q${last}`
  setUpPage(sheet, {
    landscape: true,
    title: 'Leakage allowed and used, stage by stage',
    lastRow: last,
    lastColumn: heads.length,
    repeat: `${ALLOWANCE_HEAD}:${ALLOWANCE_HEAD}`,
    // On one page its 17 columns would be printed at half their size.
    wide: { pages: 2, repeat: 'A:B' },
  })
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
    test.record.test.date,
    { value: test.target.limit, numFmt: '0.00' },
    { value: test.basis, numFmt: '0.0' },
    { value: test.decision.budget.block.value('v'), numFmt: '0.000' },
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
    live(places, allowance, 's_u', '0%'),
    live(places, allowance, 'q_l', '+0.0;-0.0;0.0'),
    live(places, allowance, 'A_l', '+0;-0;0'),
    live(places, probability, 'P_s', '0%'),
    decisionOf(stage, row),
    stage.why,
    names.get(test.file) ?? test.file,
  ]
  cells.forEach((shown, i) => {
    const { value, numFmt } =
      shown !== null && typeof shown === 'object' ? shown : { value: shown, numFmt: undefined }
    dress(sheet.getCell(row, i + 1), {
      ...(numFmt && { numFmt }),
      alignment:
        i >= 3 && i <= 13
          ? { horizontal: 'right', vertical: 'top' }
          : { ...wrap, horizontal: 'left', indent: i === columns.decision - 1 ? 1 : 0 },
    }).value = value ?? null
  })
  sheet.getRow(row).height = Math.max(heightFor(stage.plot, 24), heightFor(stage.why ?? '', 20))
  underline(sheet, row, heads.length)
}

/** Live where the figures decide; as found where the test is not valid, altered, or the acceptance test. */
const decisionOf = ({ decision, why, stage }: WorkedStage, row: number): Shown =>
  why !== undefined || stage === 'acceptance'
    ? { value: decision }
    : {
        value: { formula: `IF(N${row}>=$D$${CONFIDENCE},"go","stop")`, result: decision },
      }
