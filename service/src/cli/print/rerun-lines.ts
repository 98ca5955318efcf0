import type { Difference, RerunOutcome, RerunReport, RerunTest } from '@draughtbook/shared-calc/rerun'
import { outcomes, signatureWords } from '@draughtbook/shared-calc/rerun'
import { count } from './number-text.js'

/** Differences of one file that are named; the others are counted. */
const MOST = 8
/** Figures named below a changed input. */
const MOST_FOLLOWING = 4

/** What is said about one test: nothing where it is as issued and nothing is odd about its signature. */
export function testLines(test: RerunTest): string[] {
  const { file, part, outcome, why, differences, signature, remarks = [] } = test
  const name = `${file}${part === undefined ? '' : ` (${part})`}`
  const odd = signature?.state === 'key not given' || signature?.state === 'invalid'
  if (outcome === 'cannot be read') return []
  // A report on several tests has no outcome of its own: how much of it could be compared is what counts.
  if (outcome === 'agrees' && isReport(test)) return [`${name}: ${why}`]
  const quiet = outcome === 'exactly as issued' || outcome === 'agrees' || outcome === 'saved again'
  const said = odd ? [signatureWords[signature.state], ...remarks] : remarks
  if (quiet) return said.length > 0 ? [`${name}: ${[outcome, ...said].join('; ')}`] : []
  const real = differences.filter(({ rounding }) => !rounding)
  return [
    headLine(name, test, real),
    ...real.slice(0, MOST).flatMap(differenceLines),
    ...remarks.map((remark) => `  ${remark}`),
    ...(real.length > MOST ? [`  ${real.length - MOST} more: see --out or --json`] : []),
  ]
}

/** The outcome with its reason; differences that are listed below are not named here too. */
function headLine(name: string, { outcome, why, signature }: RerunTest, real: readonly Difference[]): string {
  const listed = real.length > 0 && signature?.state !== 'key not given' && signature?.state !== 'invalid'
  if (outcome === 'inputs changed after issue') {
    const inputs = real.filter(({ kind }) => kind === 'input').length
    const others = real.length - inputs
    const more = others > 0 ? `, and ${count(others, 'other difference')}` : ''
    return `${name}: ${listed && inputs > 0 ? `${count(inputs, 'input')} changed after issue${more}` : why}`
  }
  return outcome === 'differs' && listed ? `${name}: ${outcome}` : `${name}: ${outcome}: ${why}`
}

const isReport = ({ kind }: RerunTest): boolean =>
  kind === 'register' || kind === 'building' || kind === 'stages' || kind === 're-run'

function differenceLines(one: Difference): string[] {
  const { label, cell, unit, recorded, expected, kind, follows = [] } = one
  const place = cell === undefined || label.includes(cell) ? '' : ` (${cell})`
  const pair =
    kind === 'figure'
      ? `in the file ${value(recorded, unit)}, recalculated ${value(expected, unit)}`
      : `issued ${value(expected, unit)}, in the file ${value(recorded, unit)}`
  return [
    `  ${label}${place}: ${pair}`,
    ...follows
      .slice(0, MOST_FOLLOWING)
      .map(
        (figure) =>
          `    ${figure.label}: issued ${value(figure.recorded, figure.unit)}, recalculated ${value(figure.expected, figure.unit)}`,
      ),
    ...(follows.length > MOST_FOLLOWING ? [`    and ${follows.length - MOST_FOLLOWING} more figures`] : []),
  ]
}

const LONGEST = 60

/** A number with its unit; a text as it stands in its cell, in quotation marks. */
function value(content: Difference['recorded'], unit = ''): string {
  if (content === null) return 'nothing'
  if (typeof content === 'number')
    return `${String(Number(content.toPrecision(6))).replace('-', '−')} ${unit}`.trimEnd()
  const text = String(content).replace(/\s+/g, ' ')
  return `"${text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text}"`
}

/** Outcomes as they follow a number, where that changes them. */
const counted: Partial<Record<RerunOutcome, (count: number) => string>> = {
  agrees: (n) => (n === 1 ? 'agrees' : 'agree'),
  differs: (n) => (n === 1 ? 'differs' : 'differ'),
  'older calculation version': (n) => `issued under ${n === 1 ? 'an older version' : 'older versions'}`,
  'inputs changed after issue': () => 'with inputs changed after issue',
  'signature not accepted': (n) => `with ${n === 1 ? 'a signature' : 'signatures'} not accepted`,
}

/** Counts of outcomes, and of signatures where any file is a Draughtbook summary. */
export function countLines({ tests, counts, passedOver = [] }: RerunReport): string[] {
  const found = outcomes
    .filter((outcome) => counts[outcome] > 0 && outcome !== 'cannot be read')
    .map((outcome) => `${counts[outcome]} ${counted[outcome]?.(counts[outcome]) ?? outcome}`)
  const signed = (Object.keys(signatureWords) as (keyof typeof signatureWords)[]).flatMap((state) => {
    const files = tests.filter(({ signature }) => signature?.state === state).length
    return files > 0 ? [`${files} ${signatureWords[state]}`] : []
  })
  if (tests.length === 0) return ['No test was re-run: no Draughtbook summary was found.']
  const unread = counts['cannot be read']
  if (unread === tests.length) return [`No test was re-run: ${count(unread, 'file')} cannot be read.`]
  const compared = tests.filter((test) => isReport(test) && test.outcome !== 'cannot be read').length
  const one = [
    count(tests.length - unread - compared, 'test re-run', 'tests re-run'),
    ...(compared > 0 ? [count(compared, 'report on them compared', 'reports on them compared')] : []),
  ].join(', ')
  const reports = [
    ...(unread > 0 ? [`${count(unread, 'file')} that cannot be read`] : []),
    ...(passedOver.length > 0 ? [`${passedOver.length} without a record`] : []),
  ]
  return [
    `${one}: ${[...found, ...reports].join(', ')}`,
    ...(signed.length > 0 ? [`Signatures: ${signed.join(', ')}`] : []),
  ]
}
