import { hexToBytes } from '@noble/hashes/utils.js'
import type { Worksheet } from 'exceljs'
import { strFromU8 } from 'fflate'
import { CALCULATION_VERSION } from '../../catalogue/calculation-version.js'
import { counted, dayFromWords, firstFew } from '../../catalogue/words.js'
import { problemsOf } from '../../contract/problem.js'
import { problemsInWords } from '../../contract/record/index.js'
import type { Grid } from '../../log/grid/grid.js'
import { openLog } from '../../log/open-log.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { versions } from '../../versions/list.js'
import { isNewer, unknownVersion } from '../../versions/unknown-version.js'
import { archiveDifferences } from '../archive-shape.js'
import { type RerunTest, unreadable } from '../report.js'
import type { RerunReport } from '../report-of-all.js'
import { comparedParts, compareWhole } from '../several/compare-workbook.js'
import { contentAt, textAt } from '../several/sheet-content.js'
import { DIFFERENCES_SHEET } from '../workbook/differences-sheet.js'
import { FILES_SHEET } from '../workbook/files-sheet.js'
import { layOutRerun } from '../workbook/lay-out-rerun.js'
import { FACTS_ROW, SIGN_OFF_LINES, SIGN_OFF_SHEET } from '../workbook/sign-off-sheet.js'
import { filesNamed } from './files-named.js'
import { keysOtherwise } from './keys-otherwise.js'

/** Makes a report of tests re-run, as of a date. */
export type MakeReport = (tests: readonly RerunTest[], asOf: string) => Promise<RerunReport>

/**
 * A re-run report against the same made again of the files that it names, as they are now. Undefined where none of them is given, where
 * another calculation version made it, or where it is about other re-runs too: then there is nothing to compare it with.
 */
export async function compareRerun(
  { bytes: hex = '', ...about }: RerunTest,
  given: readonly RerunTest[],
  make: MakeReport,
): Promise<RerunTest | undefined> {
  try {
    const bytes = hexToBytes(hex)
    const grid = openLog(bytes, about.file)
    const seen = comparedParts(() => archivedParts(bytes))
    const sheet = grid.sheet(SIGN_OFF_SHEET)
    const { tests, signatures, missing } = filesNamed(grid, seen.parts(), given)
    const version = textAt(sheet, FACTS_ROW + 1, 2)
    // An earlier version could not re-run files of a later one: then that line was changed.
    const older = version !== CALCULATION_VERSION && isKnown(version) && !tests.some(isLaterThan(version))
    // Its files are of that version too: what it says of them cannot be made again.
    if (isNewer(version) && tests.some(({ calculationVersion = '' }) => isNewer(calculationVersion)))
      return { ...about, ...unreadable(about.file, unknownVersion(version)) }
    const ofReruns = tests.some(({ kind }) => kind === 're-run')
    if (tests.length === 0 || older || ofReruns) return undefined
    if (missing.length > 0)
      return {
        ...about,
        ...unreadable(about.file, `files that it names are not among those given: ${firstFew(missing)}`),
      }
    const otherKeys = keysOtherwise(tests, signatures)
    if (otherKeys !== undefined) return { ...about, ...unreadable(about.file, otherKeys) }
    // Where its date was changed, the day on which the file was made.
    const asOf = dayFromWords(textAt(sheet, FACTS_ROW, 2)) ?? dayMade(seen.parts())
    const made = layOutRerun(await make(tests, asOf))
    const entered = enterSignOff(made.getWorksheet(SIGN_OFF_SHEET), grid)
    const { cells, savedAgain, differences } = await compareWhole(made, grid, seen, {
      linked: [FILES_SHEET, DIFFERENCES_SHEET],
      first: archiveDifferences(bytes),
    })
    const real = differences.filter(({ rounding }) => !rounding)
    const [first] = real
    const words = `made again from its ${counted(tests.length, 'file')}`
    const saved = savedAgain === undefined ? '' : `; saved again${savedAgain && ` by ${savedAgain}`}`
    return {
      ...about,
      outcome: first ? 'differs' : 'agrees',
      why: first
        ? `${words}, it has ${counted(real.length, 'difference')}: ${first.label}${first.cell === undefined ? '' : ` (${first.cell})`}${real.length > 1 ? ', …' : ''}`
        : `${words}, everything in it agrees${saved}`,
      compared: { figures: 0, cells },
      differences,
      notes: entered.length === 0 ? [] : [`Entered by hand, so not checked: ${entered.join(', ')}`],
    }
  } catch (error) {
    const problems = problemsOf(error)
    if (problems === undefined) throw error
    return { ...about, ...unreadable(about.file, problemsInWords(problems)) }
  }
}

const placeOf = (version = ''): number => versions.findIndex((one) => one.version === version)
const isKnown = (version: string): boolean => placeOf(version) >= 0
const isLaterThan =
  (version: string) =>
  ({ calculationVersion }: RerunTest): boolean =>
    placeOf(calculationVersion) > placeOf(version)

const dayMade = (parts: Parts): string =>
  /<dcterms:created[^<>]{0,200}>(\d{4}-\d\d-\d\d)/.exec(
    strFromU8(parts.get('docProps/core.xml') ?? new Uint8Array()),
  )?.[1] ?? '1900-01-01'

/** Puts what the auditor entered to sign the report into the one made again. Returns its cells. */
function enterSignOff(sheet: Worksheet | undefined, grid: Grid): string[] {
  const found = grid.sheet(SIGN_OFF_SHEET)
  const cells: string[] = []
  sheet?.eachRow((_, row) => {
    if (!SIGN_OFF_LINES.includes(sheet.getCell(row, 1).text)) return
    for (const column of [2, 3]) {
      const content = contentAt(found, row, column)
      if (content === undefined || content === '') continue
      const cell = sheet.getCell(row, column)
      cell.value = content
      cells.push(`${SIGN_OFF_SHEET}!${cell.address}`)
    }
  })
  return cells
}
