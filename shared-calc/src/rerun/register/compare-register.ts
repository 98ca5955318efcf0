import { counted, dayInWords, firstFew } from '../../catalogue/words.js'
import { addressOf, withSheet } from '../../log/grid/address.js'
import { NOT_LOGGED } from '../../reports/register/totals.js'
import { headInWords, REGISTER_SHEET } from '../../reports/register/workbook/columns.js'
import { quotedColumns, quotedOf } from '../../reports/register/workbook/quoted.js'
import { computedAgrees } from '../agreement.js'
import { testNamed } from '../named-test.js'
import type { Difference, QuotedRow, RegisterRead, RerunTest } from '../report.js'
import { isOfficeLook } from './office-looks.js'
import { wholeRegister } from './whole-register.js'

/**
 * A register against the tests of the same re-run: each row against the file it names, the tests that should have a row, and where all
 * of its tests are given, every cell and everything visible against a register made again from them.
 * Undefined where none of its files is among those given, and nothing is wrong with its own formulas.
 */
export async function compareRegister(
  register: RerunTest,
  given: readonly RerunTest[],
): Promise<RerunTest | undefined> {
  const { register: read, bytes: _, ...about } = register
  if (!read) return about
  const tests = given.filter(({ line }) => line !== undefined)
  const pairs = read.rows.map((row) => {
    const { plot, date } = row.shown
    return { row, test: testNamed({ file: row.file, plot: textOf(plot), date: textOf(date) }, tests) }
  })
  const compared = pairs.flatMap(({ row, test }) => (test ? [{ row, test }] : []))
  if (compared.length === 0 && about.differences.length === 0) return undefined
  const known = [
    ...compared.flatMap(({ row, test }) => rowDifferences(row, test, read)),
    ...missingRows(
      read,
      compared.map(({ test }) => test),
      tests,
    ),
    ...about.differences,
  ]
  const whole = await wholeRegister(register, read, pairs, given, known)
  const all = 'notCompared' in whole ? undefined : whole
  // A program that recalculates a register moves the last digits of nearly all its cells: thousands of lines that say nothing.
  const differences = all ? all.differences.filter(({ rounding }) => !rounding) : known
  const unread = read.rows.length - compared.length
  const [first, ...more] = differences.filter((one) => !isOfficeLook(one))
  const marked = [...new Set(differences.filter(isOfficeLook).flatMap(({ cell }) => cell ?? []))]
  const rows = counted(compared.length, 'row')
  return {
    ...about,
    outcome: first ? 'differs' : 'agrees',
    why: [
      first
        ? `${counted(1 + more.length, 'difference')} from ${all ? 'the register as its tests give it' : 'the tests it lists'}: ${first.label}${first.cell === undefined ? '' : ` (${first.cell})`}${more.length > 0 ? ', …' : ''}`
        : all
          ? `made again from its ${counted(compared.length, 'test')}, ${marked.length > 0 ? `every figure, text and formula agrees; cells coloured or set otherwise since: ${firstFew(marked)}` : 'every figure and everything visible agrees'}`
          : `${rows} ${compared.length === 1 ? 'agrees with its file' : 'agree with their files'}, and its formulas are as they were written`,
      ...(all && !first && all.savedAgain !== undefined
        ? [`saved again${all.savedAgain && ` by ${all.savedAgain}`}`]
        : []),
      ...(unread > 0
        ? [
            `${counted(unread, 'row')} not checked, because ${unread === 1 ? 'its file is' : 'their files are'} not among those given`,
          ]
        : []),
    ].join('; '),
    compared: {
      figures: compared.length * quotedColumns.length,
      cells: all ? all.cells : about.compared.cells,
    },
    differences,
    notes: [
      ...(all ? [] : about.notes),
      ...(all?.sorted ? ['Its rows were sorted after it was written'] : []),
      'notCompared' in whole
        ? `Checked: rows, totals, and whether every value can be read. Not checked, because ${whole.notCompared}: sheets Stages, To do, Trends and Charts, colours, column widths and page set-up`
        : 'Orders and fees, the date "as at", files left out, buildings, and months of earlier registers are taken from the register itself',
    ],
  }
}

const textOf = (value: string | number | undefined): string | undefined =>
  value === undefined ? undefined : String(value)

/** Classes of rows whose figures a register leaves out. */
const WITHOUT_FIGURES = 'altered'

function rowDifferences(
  { row, role, shown }: QuotedRow,
  { line, building, kind }: RerunTest,
  { places }: RegisterRead,
): Difference[] {
  if (role === WITHOUT_FIGURES || !line) return []
  const quoted = quotedOf(line)
  return quotedColumns.flatMap(({ key, head }): Difference[] => {
    if (kind === 'own layout' && key === 'findings') return []
    const [found, expected] = [shown[key] ?? null, quoted[key] ?? null]
    if (isSame(found, expected)) return []
    return [
      {
        kind: 'cell',
        label: `${headInWords(head)} of ${building ?? String(quoted.plot ?? '')}`,
        cell: withSheet(REGISTER_SHEET, addressOf(row, places[key] ?? 0)),
        recorded: found,
        expected,
        ...(typeof found === 'number' && typeof expected === 'number' && { change: found - expected }),
        rounding: false,
      },
    ]
  })
}

const isSame = (found: string | number | null, expected: string | number | null): boolean =>
  typeof found === 'number' && typeof expected === 'number'
    ? computedAgrees(found, expected) !== 'differs'
    : String(found ?? '').trim() === String(expected ?? '').trim()

/** Tests given that belong into the register and have no row; a copy of one that has is none. */
function missingRows(
  { month, client, asOf, places }: RegisterRead,
  found: readonly RerunTest[],
  tests: readonly RerunTest[],
): Difference[] {
  const known = new Set(found.map(({ recordDigest }) => recordDigest))
  return tests
    .filter((test) => !found.includes(test) && !known.has(test.recordDigest))
    .filter(({ line }) => {
      const date = line?.date ?? ''
      const name = (line?.client ?? NOT_LOGGED).toLocaleLowerCase('en')
      return (
        (month === undefined || date.startsWith(month)) &&
        (asOf === undefined || date <= asOf) &&
        (client === undefined || name === client.toLocaleLowerCase('en'))
      )
    })
    .map(({ file, line }) => ({
      kind: 'cell' as const,
      label: `test of ${line ? `${line.building} on ${dayInWords(line.date)}` : file} has no row`,
      cell: withSheet(REGISTER_SHEET, addressOf(0, places.file ?? 0)),
      recorded: null,
      expected: file,
      rounding: false,
    }))
}
