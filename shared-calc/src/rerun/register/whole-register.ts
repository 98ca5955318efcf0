import { hexToBytes } from '@noble/hashes/utils.js'
import { CALCULATION_VERSION } from '../../catalogue/calculation-version.js'
import { counted } from '../../catalogue/words.js'
import type { Grid } from '../../log/grid/grid.js'
import { openLog } from '../../log/open-log.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import { LEFT_OUT_SHEET } from '../../reports/register/workbook/left-out-sheet.js'
import { layOutRegister } from '../../reports/register/workbook/write-register.js'
import { versionIn } from '../../reports/workbook/new-workbook.js'
import { testNamed } from '../named-test.js'
import type { Difference, QuotedRow, RegisterRead, RerunTest } from '../report.js'
import { type ComparedWorkbook, comparedParts, compareWhole } from '../several/compare-workbook.js'
import { LINKED, seenFromOf } from './links-of-register.js'
import { isSorted, leftOutOf, type NamedLine, registerAgain, takenOver } from './register-again.js'

export interface Pair {
  readonly row: QuotedRow
  readonly test: RerunTest | undefined
}

/** The whole register compared, or why it was not. */
export type WholeRegister =
  | (ComparedWorkbook & { readonly sorted: boolean })
  | { readonly notCompared: string }

/**
 * Every cell and everything visible of a register against one made again from its tests. What only the office knows is taken from the
 * file: orders and fees, the date, files left out, and months of earlier registers.
 * @param found - differences that are known already
 */
export async function wholeRegister(
  { bytes: hex, file }: RerunTest,
  read: RegisterRead,
  pairs: readonly Pair[],
  given: readonly RerunTest[],
  found: readonly Difference[],
): Promise<WholeRegister> {
  if (hex === undefined || read.asOf === undefined) return { notCompared: 'its date cannot be read' }
  const bytes = hexToBytes(hex)
  const grid = openLog(bytes, file)
  const missing = pairs.filter(({ test }) => test === undefined).length
  if (missing > 0) return { notCompared: `the files of ${counted(missing, 'row')} are not among those given` }
  if (pairs.some(({ test }) => test?.kind === 'own layout'))
    return { notCompared: 'some of its tests are logs, whose findings are not all found again' }
  const others = leftOutOf(grid).filter(({ kind }) => kind === 'other month')
  const elsewhere = others.map((one) => ({
    ...one,
    test: testNamed({ file: one.part === undefined ? one.file : `${one.file} (${one.part})` }, given),
  }))
  const unknown = elsewhere.filter(({ test }) => test?.line === undefined).length
  if (unknown > 0)
    return {
      notCompared: `${counted(unknown, 'test')} of other months, by which it was made, ${unknown === 1 ? 'is' : 'are'} not among those given`,
    }
  const version = versionOf(grid)
  const latest = pairs.some(({ test }) => test?.calculationVersion === CALCULATION_VERSION)
  if (version !== undefined && version !== CALCULATION_VERSION && !latest)
    return { notCompared: `it was made under calculation version ${version}` }
  const tests = [
    ...pairs.flatMap(({ row, test }) => named(test, row.file, row)),
    ...elsewhere.flatMap(({ file: name, test }) => named(test, name)),
    ...(read.client === undefined ? [] : ofOtherClients(read, pairs, elsewhere, given)),
  ]
  const parts = archivedParts(bytes)
  const { workbook, charts } = layOutRegister(
    registerAgain(grid, read, tests),
    seenFromOf(parts, filesNamed(tests, grid)),
    // A register of an earlier version names none; one that holds a test of this version was made under it.
    version ?? (latest ? CALCULATION_VERSION : null),
  )
  const compared = await compareWhole(
    workbook,
    grid,
    comparedParts(() => parts),
    {
      linked: LINKED,
      charts,
      first: found,
    },
  )
  if (version === undefined && !latest && compared.differences.some(({ rounding }) => !rounding))
    return { notCompared: 'it names no calculation version, so it was made before 1.7.0' }
  return { ...compared, sorted: isSorted(tests) }
}

function named(test: RerunTest | undefined, file: string, row?: QuotedRow): NamedLine[] {
  if (!test?.line) return []
  // A test that was changed after the register was made is compared by what its file says now.
  const altered = row?.role === 'altered' || row === undefined ? test.given?.altered : undefined
  const { altered: _, ...line } = test.line
  return [{ file, line: altered === undefined ? line : { ...line, altered }, ...(row && { row: row.row }) }]
}

/** Tests of other clients may be what a test repeats; a client's register names none of them. */
const ofOtherClients = (
  read: RegisterRead,
  pairs: readonly Pair[],
  elsewhere: readonly { readonly test: RerunTest | undefined }[],
  given: readonly RerunTest[],
): NamedLine[] => {
  const used = new Set([...pairs, ...elsewhere].map(({ test }) => test))
  const client = read.client?.toLocaleLowerCase('en')
  return given
    .filter((test) => !used.has(test) && test.line?.client?.toLocaleLowerCase('en') !== client)
    .filter(({ date }) => date === undefined || read.asOf === undefined || date <= read.asOf)
    .flatMap((test) => named(test, test.file))
}

const filesNamed = (tests: readonly NamedLine[], grid: Grid): string[] => [
  ...tests.map(({ file }) => file.replace(/ \(test \d{1,4}\)$/, '')),
  ...leftOutOf(grid).map(({ file }) => file),
  ...takenOver(grid).map(({ from }) => from),
]

/** The version that sheet Left out names. */
function versionOf(grid: Grid): string | undefined {
  const sheet = grid.sheet(LEFT_OUT_SHEET)
  for (let row = (sheet?.rows ?? 0) - 1; row >= 0; row -= 1) {
    const version = versionIn(String(sheet?.at(row, 0)?.value ?? ''))
    if (version !== undefined) return version
  }
  return undefined
}
