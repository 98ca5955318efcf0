import type { LeftOut, Register } from '@draughtbook/shared-calc/register'
import { count } from './number-text.js'

/**
 * What is said of a register: its rows, what the totals count, bills, and everything that is not in it.
 * @param listed - whether what is written has a sheet that lists everything left out
 */
export function registerLines(register: Register, listed: boolean): string[] {
  const { tests, counting, meets, misses, notValid, noTarget, billable, fees, withoutFee } = register.overall
  const toRetest = register.toRetest.length + register.toRetestElsewhere.length
  const others = register.toRetestElsewhere.length
  const elsewhere = others === 0 ? '' : `, ${others === toRetest ? 'all' : others} from other months`
  if (tests === 0) return ['no tests', ...leftOutLines(register.leftOut, listed)]
  const judged = [
    `${meets} met the target`,
    `${misses} failed`,
    `${notValid} not valid`,
    ...(noTarget > 0 ? [`${noTarget} without a target`] : []),
  ]
  return [
    `${tests === counting ? count(tests, 'test') : `${count(tests, 'row')}, ${count(counting, 'test')} included in totals`}: ${judged.join(', ')}`,
    ...notCounted(register),
    `${count(billable, 'test')} to bill; ${count(toRetest, 'plot')} to retest${elsewhere}`,
    ...(fees === undefined
      ? []
      : [
          `${fees.toFixed(2)} in fees; ${withoutFee === 0 ? 'every test to bill has a fee' : `${count(withoutFee ?? 0, 'test')} to bill without a fee`}`,
        ]),
    ...leftOutLines(register.leftOut, listed),
  ]
}

/** Rows that the totals do not include, by the reason. */
function notCounted({ overall: { tests, counting, classes, superseded } }: Register): string[] {
  const reasons: [number, string, string][] = [
    [superseded, 'replaced by a later test', 'replaced by later tests'],
    [classes['earlier issue'], 'earlier issue', 'earlier issues'],
    [classes.duplicate, 'duplicate', 'duplicates'],
    [classes.altered, 'altered after issue', 'altered after issue'],
  ]
  const said = reasons.filter(([n]) => n > 0).map(([n, one, several]) => `${n} ${n === 1 ? one : several}`)
  return tests === counting ? [] : [`${count(tests - counting, 'row')} not included: ${said.join(', ')}`]
}

const GROUPS: readonly [LeftOut['kind'], one: string, several: string][] = [
  ['other month', 'test of another month', 'tests of other months'],
  ['own report', 'Draughtbook report, not a test', 'Draughtbook reports, not tests'],
  ['other format', 'file that is not a workbook or a CSV file', 'files that are not workbooks or CSV files'],
  ['temporary or hidden file', 'temporary or hidden file', 'temporary or hidden files'],
  ['link', 'link, which is not followed', 'links, which are not followed'],
]

/** Everything left out, in groups; what could not be read has been named with its reason already. */
function leftOutLines(leftOut: readonly LeftOut[], listed: boolean): string[] {
  const named = (files: readonly LeftOut[]) => someOf(files, listed)
  if (leftOut.length === 0) return ['Nothing left out']
  const unread = leftOut.filter(({ expected }) => !expected)
  const groups = GROUPS.flatMap(([kind, one, several]) => {
    const of = leftOut.filter((left) => left.expected && left.kind === kind)
    return of.length === 0 ? [] : [`${of.length} ${of.length === 1 ? one : several}: ${named(of)}`]
  })
  const known = new Set(GROUPS.map(([kind]) => kind))
  const others = leftOut.filter(({ expected, kind }) => expected && !known.has(kind))
  return [
    'Left out:',
    ...(unread.length > 0
      ? [`${count(unread.length, 'file')} that could not be read: ${named(unread)}`]
      : []),
    ...groups,
    ...(others.length > 0 ? [`${others.length} not a test: ${named(others)}`] : []),
  ].map((line, i) => (i === 0 ? line : `  ${line}`))
}

const NAMED = 3

function someOf(files: readonly LeftOut[], listed: boolean): string {
  const names = files
    .slice(0, NAMED)
    .map(({ file, part }) => (part === undefined ? file : `${file} (${part})`))
  return files.length > NAMED
    ? `${names.join(', ')} and ${files.length - NAMED} more${listed ? ' (all on sheet Left out)' : ''}`
    : names.join(', ')
}
