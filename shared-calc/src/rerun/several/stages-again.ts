import { type SiteStage, siteStages } from '../../assessment/stages/work-stages.js'
import { stageReasons } from '../../catalogue/findings/several-homes.js'
import type { Grid } from '../../log/grid/grid.js'
import {
  ALLOWANCE,
  ALLOWANCE_HEAD,
  CONFIDENCE,
  columns,
  SHARES,
  shareColumn,
} from '../../reports/stages/allowance-sheet.js'
import { NOT_USED, SITE } from '../../reports/stages/site-sheet.js'
import { layOutStages } from '../../reports/stages/write-stages.js'
import { type MadeOfTests, numberAt, type PartOf, textAt } from './made-of-tests.js'

/** The stages of a site: a row of sheet Allowance for each test, and a line of sheet Site for each that is not used. */
export const stagesAgain: MadeOfTests = {
  words: 'stages',
  copied: { sheet: ALLOWANCE, first: ALLOWANCE_HEAD + 1, columns: columns.figure },
  parts: (grid) => {
    const lines = linesOfNotUsed(grid)
    const inFull = lines.flatMap(({ why }) => repeatedBy(why))
    return [...used(grid, inFull), ...lines.map(({ file }) => ({ file, given: file }))]
  },
  layOut: (grid, tests) => {
    const sheet = grid.sheet(ALLOWANCE)
    const shares = siteStages.map((stage, i) => [
      stage,
      numberAt(sheet, SHARES, shareColumn(i)) ?? Number.NaN,
    ])
    return layOutStages({
      tests,
      shares: Object.fromEntries(shares) as Record<SiteStage, number>,
      confidence: numberAt(sheet, CONFIDENCE, shareColumn(0)) ?? Number.NaN,
    })
  },
}

/** @param inFull - files that lines on other tests name as they were given; a row has its file's short name */
function used(grid: Grid, inFull: readonly string[]): PartOf[] {
  const sheet = grid.sheet(ALLOWANCE)
  const parts: PartOf[] = []
  for (let row = ALLOWANCE_HEAD + 1; row <= (sheet?.rows ?? 0); row += 1) {
    const [file, plot] = [textAt(sheet, row, columns.file), textAt(sheet, row, columns.plot)]
    if (file === '' && plot === '') continue
    const given = inFull.find((path) => path.replaceAll('\\', '/').endsWith(`/${file}`))
    parts.push({ row, file, given, plot, date: textAt(sheet, row, columns.date) })
  }
  return parts
}

function linesOfNotUsed(grid: Grid): { readonly file: string; readonly why: string }[] {
  const sheet = grid.sheet(SITE)
  return Array.from({ length: sheet?.rows ?? 0 }, (_, row) => textAt(sheet, row + 1, 1)).flatMap((text) => {
    const [file, why] = text.split(NOT_USED)
    return file !== undefined && why !== undefined ? [{ file, why }] : []
  })
}

/** The file that a reason names as the later test of the stage. */
function repeatedBy(why: string): string[] {
  const [before = '', after = ''] = stageReasons.repeated('|').split('|')
  return why.startsWith(before) && why.endsWith(after) ? [why.slice(before.length, -after.length)] : []
}
