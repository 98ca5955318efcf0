import { finding } from '../../catalogue/findings/finding.js'
import type { Finding, LeakLog, TestRecord } from '../../contract/record/index.js'
import type { Rule } from '../../evaluation/rules/rule.js'
import type { TestWithSite } from '../test-with-site.js'
import type { WorkedLeaks } from './work-leaks.js'

/** What the leak log leaves open or contradicts. */
export function leakFindings(record: TestRecord, log: LeakLog, worked: WorkedLeaks, at = 'leaks'): Finding[] {
  return [
    ...tooMuch(log, worked, at),
    ...unsized(log, worked, at),
    ...rounds(log, at),
    ...otherDirections(record, log, at),
    ...grew(worked, at),
  ]
}

/** Leaks still open add up to more than was measured. */
function tooMuch({ list }: LeakLog, { flows, sized, whole }: WorkedLeaks, at: string): Finding[] {
  if (!flows) return []
  const open = sized.reduce(
    (sum, leak, row) => (leak.fixed ? sum : sum + (flows.column('A_h')[row] as number)),
    0,
  )
  const measured = whole.seal.value('A_s')
  if (open <= measured) return []
  const where = list.flatMap((leak, i) => (!leak.fixed && leak.size ? [`${at}.list[${i}].size`] : []))
  return [finding('leaks-too-large', { where, value: open, limit: measured }, { open, measured })]
}

function unsized({ list }: LeakLog, { sized }: WorkedLeaks, at: string): Finding[] {
  const known = new Set(sized)
  const where = list.flatMap((leak, i) => (known.has(leak) ? [] : [`${at}.list[${i}].size`]))
  return where.length === 0 ? [] : [finding('leak-size', { where }, { count: where.length })]
}

function rounds({ list, earlierTests = [] }: LeakLog, at: string): Finding[] {
  const earlier = earlierTests.length
  return list.flatMap(({ fixed, fixedInRound: round, place }, i): Finding[] => {
    const where = [`${at}.list[${i}].fixedInRound`]
    if (fixed && round === undefined && earlier > 0)
      return [finding('leak-round/not-stated', { where }, { place })]
    if (!fixed && round !== undefined)
      return [finding('leak-round/not-fixed', { where: [`${at}.list[${i}].fixed`] }, { place })]
    if (round !== undefined && round > earlier)
      return [finding('leak-round/no-test', { where }, { place, round, earlier })]
    return []
  })
}

/** Tests of different directions are not quite comparable. */
function otherDirections({ runs }: TestRecord, { earlierTests = [] }: LeakLog, at: string): Finding[] {
  const now = runs.map(({ direction }) => direction)
  return earlierTests.flatMap(({ directions: earlier }, test): Finding[] => {
    const where = [`${at}.earlierTests[${test}].directions`]
    if (earlier === undefined) return [finding('round-directions/not-stated', { where }, { test })]
    const same = earlier.length === now.length && earlier.every((one) => now.includes(one))
    return same ? [] : [finding('round-directions/other', { where }, { test, earlier, now })]
  })
}

function grew({ rounds: all }: WorkedLeaks, at: string): Finding[] {
  return all.flatMap(({ compared }, round): Finding[] => {
    const gain = compared.value('d_ab')
    if (gain >= 0) return []
    const where = [`${at}.earlierTests[${round}].airLeakageRate50_m3_h`]
    return [finding('round-grew', { where, value: gain, limit: 0 }, { growth: -gain, round })]
  })
}

/** What the leak log of a record leaves open or contradicts. */
export const leakLog: Rule<TestWithSite> = ({ record, test }) =>
  record.leaks && test.leaks ? leakFindings(record, record.leaks, test.leaks) : []
