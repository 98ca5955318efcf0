import type { Worksheet } from 'exceljs'
import { type SiteStage, siteStages, type WorkedStages } from '../../assessment/stages/work-stages.js'
import { CALCULATION_VERSION } from '../../catalogue/calculation-version.js'
import { columnLetters } from '../workbook/address.js'
import { writeLine } from '../workbook/live-cell.js'
import { madeUnder } from '../workbook/new-workbook.js'
import { setUpPage } from '../workbook/page.js'
import { dress, fills, fonts, heightFor, underline } from '../workbook/styles.js'
import { ALLOWANCE, ALLOWANCE_HEAD, columns, SHARES, shareColumn } from './allowance-sheet.js'

export const SITE = 'Site'
/** Between a file that is not used and the reason. */
export const NOT_USED = ': not used, because '
const HEAD = 4
const PLOT_WIDTH = 34
const heads: Readonly<Record<SiteStage, string>> = {
  fabric: 'Fabric',
  'after services': 'After services',
  acceptance: 'Acceptance',
}

/** Plots down, stages across: share of the target used, and whether the next trade may start. */
export function writeSiteSheet(sheet: Worksheet, { plots, stages, shares, leftOut }: WorkedStages): void {
  sheet.columns = [PLOT_WIDTH, 22, 22, 22, 16].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'May the next trade start?'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'Share of the leakage target used at each stage. Go: the leakage is within the allowance with the probability needed, so the next trade may start.'
  const all = ['Plot', ...siteStages.map((stage) => heads[stage]), 'Next']
  all.forEach((head, i) => {
    dress(sheet.getCell(HEAD, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { horizontal: i === 0 ? 'left' : 'center' },
    }).value = head
  })
  siteStages.forEach((stage, i) => {
    if (stage === 'acceptance') return
    dress(sheet.getCell(HEAD - 1, 2 + i), { font: fonts.muted, alignment: { horizontal: 'center' } }).value =
      {
        formula: `"allowed: "&ROUND(100*${ALLOWANCE}!$${columnLetters(shareColumn(i))}$${SHARES},0)&" %"`,
        result: `allowed: ${Math.round(100 * shares[stage])} %`,
      }
  })
  plots.forEach((plot, k) => {
    const row = HEAD + 1 + k
    sheet.getRow(row).height = Math.max(20, heightFor(plot, PLOT_WIDTH))
    dress(sheet.getCell(row, 1), { alignment: { vertical: 'middle', wrapText: true } }).value = plot
    siteStages.forEach((stage, i) => {
      const found = stages.find((one) => one.plot === plot && one.stage === stage)
      const cell = dress(sheet.getCell(row, 2 + i), {
        alignment: { horizontal: 'center', vertical: 'middle' },
      })
      if (!found) {
        cell.value = 'not tested'
        cell.font = fonts.muted
        return
      }
      const at = (column: number) =>
        `${ALLOWANCE}!$${columnLetters(column)}$${ALLOWANCE_HEAD + 1 + found.index}`
      cell.value = {
        formula: `ROUND(100*${at(columns.shareUsed)},0)&" %, "&${at(columns.decision)}`,
        result: `${Math.round(100 * found.allowance.value('s_u'))} %, ${found.decision}`,
      }
    })
    writeNext(sheet, row)
    underline(sheet, row, 5)
  })
  const last = HEAD + Math.max(1, plots.length)
  colourDecisions(sheet, `B${HEAD + 1}:E${last}`)
  let row = last + 2
  for (const { file, why } of leftOut)
    row = writeLine(sheet, row, `${file}${NOT_USED}${why}`, { columns: 5, perRow: 118, font: fonts.muted })
  row = writeLine(sheet, row + 1, madeUnder(CALCULATION_VERSION), {
    columns: 5,
    perRow: 118,
    font: fonts.small,
  })
  setUpPage(sheet, {
    landscape: false,
    title: 'Stages of the site',
    lastRow: row,
    lastColumn: 5,
    repeat: `${HEAD}:${HEAD}`,
  })
}

/** The decision of the last stage tested; live. */
function writeNext(sheet: Worksheet, row: number): void {
  const found = ['D', 'C', 'B'].map((letter) => sheet.getCell(`${letter}${row}`))
  const last = found.find(({ value }) => typeof value === 'object' && value !== null)
  if (!last) return
  const text = String((last.value as { result: string }).result)
  dress(sheet.getCell(row, 5), {
    font: fonts.bold,
    alignment: { horizontal: 'center', vertical: 'middle' },
  }).value = {
    formula: `MID(${last.address},FIND(", ",${last.address})+2,99)`,
    result: text.slice(text.indexOf(', ') + 2),
  }
}

/** The words carry the message; colour only helps to find them. */
function colourDecisions(sheet: Worksheet, ref: string): void {
  const first = ref.split(':')[0] ?? ''
  const rule = (words: readonly string[], argb: string, priority: number) => ({
    type: 'expression' as const,
    priority,
    formulae: [`OR(${words.map((word) => `RIGHT(${first},${word.length})="${word}"`).join(',')})`],
    style: {
      fill: { type: 'pattern' as const, pattern: 'solid' as const, bgColor: { argb }, fgColor: { argb } },
    },
  })
  sheet.addConditionalFormatting({
    ref,
    rules: [rule(['go', 'meets'], 'FFDDF3E4', 1), rule(['stop', 'fails'], 'FFF4A6A6', 2)],
  })
}
