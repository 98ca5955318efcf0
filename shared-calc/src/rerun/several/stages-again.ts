import { addressOf } from '../../log/grid/address.js'
import type { Grid } from '../../log/grid/grid.js'
import type { SeveralParts } from '../../versions/version.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'
import { numberAt, textAt } from './sheet-content.js'

type Written = SeveralParts['stages']
type Stage = Written['stages'][number]

/** The stages of a site as a version writes them: a row of sheet Allowance for each test, and a line of sheet Site for each that is not used. */
export const stagesAgain = (written: Written): MadeOfTests => ({
  words: 'stages',
  copied: {
    sheet: written.allowance.sheet,
    first: written.allowance.first,
    columns: written.allowance.columns.figure,
    file: written.allowance.columns.file,
  },
  parts: (grid) => {
    const lines = linesOfNotUsed(written, grid)
    const inFull = lines.flatMap(({ why }) => repeatedBy(written, why))
    return [...used(written, grid, inFull), ...lines.map(({ file }) => ({ file, given: file }))]
  },
  layOut: (_, tests, entered) => {
    const { allowance, shareColumn } = written
    const shares = written.stages.map((stage, i) => [
      stage,
      entered.number(allowance.sheet, allowance.shares, shareColumn(i)) ?? Number.NaN,
    ])
    return written.layOut({
      tests,
      shares: Object.fromEntries(shares) as Record<Stage, number>,
      confidence: entered.number(allowance.sheet, allowance.confidence, shareColumn(0)) ?? Number.NaN,
    })
  },
  entered: (grid) => {
    const { allowance, shareColumn } = written
    const said = (label: string, row: number, column: number) => {
      const value = numberAt(grid.sheet(allowance.sheet), row, column)
      return `${label}: ${value === undefined ? 'nothing' : `${Number((100 * value).toFixed(6))} %`} (${allowance.sheet}!${addressOf(row - 1, column - 1)})`
    }
    return [
      ...written.stages.map((stage, i) =>
        said(`share allowed up to ${stage}`, allowance.shares, shareColumn(i)),
      ),
      said('probability needed', allowance.confidence, shareColumn(0)),
    ]
  },
})

/** @param inFull - files that lines on other tests name as they were given; a row has its file's short name */
function used({ allowance }: Written, grid: Grid, inFull: readonly string[]): PartOf[] {
  const sheet = grid.sheet(allowance.sheet)
  const { columns } = allowance
  const parts: PartOf[] = []
  for (let row = allowance.first; row <= (sheet?.rows ?? 0); row += 1) {
    const [file, plot] = [textAt(sheet, row, columns.file), textAt(sheet, row, columns.plot)]
    if (file === '' && plot === '') continue
    const given = inFull.find((path) => path.replaceAll('\\', '/').endsWith(`/${file}`))
    parts.push({ row, file, given, plot, date: textAt(sheet, row, columns.date) })
  }
  return parts
}

function linesOfNotUsed(
  { sheet: name, notUsed }: Written,
  grid: Grid,
): { readonly file: string; readonly why: string }[] {
  const sheet = grid.sheet(name)
  return Array.from({ length: sheet?.rows ?? 0 }, (_, row) => textAt(sheet, row + 1, 1)).flatMap((text) => {
    const [file, why] = text.split(notUsed)
    return file !== undefined && why !== undefined ? [{ file, why }] : []
  })
}

/** The file that a reason names as the later test of the stage. */
function repeatedBy({ repeated }: Written, why: string): string[] {
  const [before = '', after = ''] = repeated('|').split('|')
  return why.startsWith(before) && why.endsWith(after) ? [why.slice(before.length, -after.length)] : []
}
