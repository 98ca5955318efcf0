import { cited, type Finding, placeWords } from '@draughtbook/shared-calc'
import { count } from './number-text.js'

const GROUPS = [
  { severity: 'invalidates', title: 'Invalidates the test' },
  { severity: 'caution', title: 'Cautions' },
  { severity: 'note', title: 'Notes' },
] as const

/** What the findings are about: a record, or as much of one as a plan or take-off has. */
type Given = Readonly<Record<string, unknown>> & Parameters<typeof placeWords>[1]

/** Findings by severity, each with its place in the record, clause and what to do. */
export function findingsText(findings: readonly Finding[], given: Given): string {
  if (findings.length === 0) return 'Findings   No problems found.'
  const numbers = GROUPS.map(({ severity }) => findings.filter((one) => one.severity === severity).length)
  const [invalidating = 0, cautions = 0, notes = 0] = numbers
  const total = `Findings   ${invalidating === 0 ? 'none invalidates' : `${invalidating} ${invalidating === 1 ? 'invalidates' : 'invalidate'}`} the test; ${count(cautions, 'caution')}, ${count(notes, 'note')}`
  const groups = GROUPS.flatMap(({ severity, title }) => {
    const own = findings.filter((one) => one.severity === severity)
    return own.length === 0
      ? []
      : [`  ${title}`, ...own.flatMap((one, i) => findingLines(one, given, streak(own, i)))]
  })
  return [total, ...groups].join('\n')
}

/** More places than these are too many to read: the first few stand for all. */
const MOST_PLACES = 8
const FIRST_PLACES = 3
/** A longer message is a list: each of its items has a line of its own. */
const LONGEST_LINE = 300

/** From this many findings of a rule in a row, a remedy that is the same for all is given once, after the last. */
const LONG_STREAK = 3

/** How many findings in a row, this one among them, have its rule and remedy, and whether it is the last of them. */
function streak(all: readonly Finding[], at: number): { length: number; last: boolean } {
  const same = (i: number) => all[i]?.rule === all[at]?.rule && all[i]?.remedy === all[at]?.remedy
  let [from, to] = [at, at]
  while (from > 0 && same(from - 1)) from -= 1
  while (to + 1 < all.length && same(to + 1)) to += 1
  return { length: to - from + 1, last: to === at }
}

function findingLines(finding: Finding, given: Given, { length, last }: ReturnType<typeof streak>): string[] {
  const { message, remedy } = finding
  const places = placesOf(finding, given)
  const source = cited(finding) && ` [${cited(finding)}]`
  return [
    ...messageLines(message, source),
    ...(places ? [`      where: ${places}`] : []),
    ...(remedy && (last || length < LONG_STREAK)
      ? [`      what to do${length < LONG_STREAK ? '' : ` (all ${length})`}: ${remedy}`]
      : []),
  ]
}

function messageLines(message: string, source: string): string[] {
  const [head = '', ...items] = message.length > LONGEST_LINE ? message.split(/(?<=[:;]) /) : [message]
  if (items.length === 0) return [`  - ${head}${source}`]
  // Behind the list, not between its heading and its items.
  return [`  - ${head}`, ...[...items, source.trim()].filter(Boolean).map((item) => `      ${item}`)]
}

/** Cells of the log, else fields in words; the path of a field that was not given follows, for --set. */
function placesOf({ cells, where }: Finding, given: Given): string {
  const places = cells?.length
    ? cells
    : where.map((path) => {
        const words = placeWords(path, given)
        return isGiven(path, given) || words === path ? words : `${words} (${path})`
      })
  const all = [...new Set(places)]
  return all.length > MOST_PLACES
    ? `${all.slice(0, FIRST_PLACES).join('; ')} and ${all.length - FIRST_PLACES} more`
    : all.join('; ')
}

function isGiven(path: string, given: Given): boolean {
  const keys = path.split(/[.[\]]+/).filter(Boolean)
  let value: unknown = given
  for (const key of keys) value = (value as Readonly<Record<string, unknown>> | undefined)?.[key]
  return value !== undefined
}
