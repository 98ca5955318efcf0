import { shortNames } from '../catalogue/short-names.js'
import type { RerunTest } from './report.js'

/**
 * What only shows when files are looked at together: several files of one test, and files whose names were swapped. Each is a remark
 * on the test; whether a reissue was right is for the auditor.
 */
export function remarksAmongFiles(tests: readonly RerunTest[]): ReadonlyMap<RerunTest, readonly string[]> {
  const remarks = new Map<RerunTest, string[]>()
  const add = (test: RerunTest, text: string) => remarks.set(test, [...(remarks.get(test) ?? []), text])
  const names = shortNames(tests.map(({ file }) => file))
  const name = ({ file }: RerunTest) => names.get(file) ?? file
  for (const same of sameTests(tests))
    for (const test of same) {
      const others = same.filter((one) => one !== test)
      const copies = others.filter(({ recordDigest }) => recordDigest === test.recordDigest)
      const other = others.filter(({ recordDigest }) => recordDigest !== test.recordDigest)
      if (copies.length > 0) add(test, `the same record is in ${listed(copies.map(name))}`)
      if (other.length > 0)
        add(
          test,
          `${listed(other.map(name))} ${other.length === 1 ? 'has' : 'have'} the same test number and date but a different record: find out which one counts`,
        )
    }
  for (const { test, fits, common } of misnamed(tests, name)) {
    const held = common === fits.building ? test.building : (test.testNumber ?? test.building)
    add(test, `the file name matches ${common}, which is in ${name(fits)}; this file holds ${held}`)
  }
  return remarks
}

/** Tests with the same number and date; without a number, of the same building and date. */
function sameTests(tests: readonly RerunTest[]): RerunTest[][] {
  const groups = new Map<string, RerunTest[]>()
  for (const test of tests) {
    if (test.kind !== 'summary workbook') continue
    const key = [test.testNumber ?? `${test.site ?? ''}|${test.building}`, test.date].join('|')
    groups.set(key, [...(groups.get(key) ?? []), test])
  }
  return [...groups.values()].filter(({ length }) => length > 1)
}

interface Misnamed {
  readonly test: RerunTest
  /** The test that the file is named after, and the name that it has in common with it. */
  readonly fits: RerunTest
  readonly common: string
}

/** Files named after the building or the number of the test in another file, and after neither of their own. */
function misnamed(tests: readonly RerunTest[], name: (test: RerunTest) => string): Misnamed[] {
  const known = new Map<string, { fits: RerunTest; common: string }>()
  for (const fits of tests) for (const common of namesOf(fits)) known.set(plain(common), { fits, common })
  const wanted = [...known].sort(([a], [b]) => b.length - a.length)
  return tests.flatMap((test) => {
    const fileName = plain(name(test).replace(/\.\w+$/, ''))
    const own = namesOf(test).map(plain)
    if (own.length === 0 || own.some((one) => fileName.includes(one))) return []
    // The longest name that fits counts: " plot 12 " is no " plot 1 ".
    const [, found] = wanted.find(([words]) => fileName.includes(words)) ?? []
    return found ? [{ test, ...found }] : []
  })
}

/** What a file may be named after. A number of few digits alone could be that of anything. */
const namesOf = ({ building, testNumber = '' }: RerunTest): string[] => [
  ...(building === undefined ? [] : [building]),
  ...((/\p{L}/u.test(testNumber) && /\d/.test(testNumber)) || /\d{4}/.test(testNumber) ? [testNumber] : []),
]

/** Words and numbers between single blanks, with one at each end. */
const plain = (text: string): string =>
  ` ${
    text
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu)
      ?.join(' ') ?? ''
  } `

const NAMED = 3
const listed = (names: readonly string[]): string =>
  names.length > NAMED
    ? `${names.slice(0, NAMED).join(', ')} and ${names.length - NAMED} more files`
    : names.join(' and ')
