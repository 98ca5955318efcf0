import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding, LeakLog, TestRecord } from '../../contract/record/index.js'
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
  return [
    {
      rule: 'leaks-too-large',
      severity: 'note',
      message: `the leaks still open add up to ${plain(open, 0)} cm², more than the whole leakage that was measured, ${plain(measured, 0)} cm²`,
      ...citing(practiceSource),
      value: open,
      limit: measured,
      where: list.flatMap((leak, i) => (!leak.fixed && leak.size ? [`${at}.list[${i}].size`] : [])),
      remedy: 'sizes by eye are rough: check the largest, and whether they lead outdoors at all',
    },
  ]
}

function unsized({ list }: LeakLog, { sized }: WorkedLeaks, at: string): Finding[] {
  const known = new Set(sized)
  const where = list.flatMap((leak, i) => (known.has(leak) ? [] : [`${at}.list[${i}].size`]))
  if (where.length === 0) return []
  return [
    {
      rule: 'leak-size',
      severity: 'note',
      message:
        where.length === 1
          ? 'one leak has no size: it counts in no area'
          : `${where.length} leaks have no size: they count in no area`,
      ...citing(practiceSource),
      where,
      remedy: 'estimate the size in words, or leave it open',
    },
  ]
}

function rounds({ list, earlierTests = [] }: LeakLog, at: string): Finding[] {
  return list.flatMap(({ fixed, fixedInRound, place }, i): Finding[] => {
    const place_ = `${at}.list[${i}]`
    const finding = (message: string, where: string, remedy: string): Finding => ({
      rule: 'leak-round',
      severity: 'note',
      message: `"${place}" ${message}`,
      ...citing(practiceSource),
      where: [where],
      remedy,
    })
    if (fixed && fixedInRound === undefined && earlierTests.length > 0)
      return [
        finding('was fixed, but not said in which round', `${place_}.fixedInRound`, 'say in which round'),
      ]
    if (!fixed && fixedInRound !== undefined)
      return [
        finding(
          'has a repair round but is not fixed',
          `${place_}.fixed`,
          'mark it fixed, or take the round out',
        ),
      ]
    if (fixedInRound !== undefined && fixedInRound > earlierTests.length)
      return [
        finding(
          `was fixed in round ${fixedInRound}, but only ${earlierTests.length} earlier ${earlierTests.length === 1 ? 'test is' : 'tests are'} known`,
          `${place_}.fixedInRound`,
          'enter the test before that round',
        ),
      ]
    return []
  })
}

/** Tests of different directions are not quite comparable. */
function otherDirections({ runs }: TestRecord, { earlierTests = [] }: LeakLog, at: string): Finding[] {
  const now = runs.map(({ direction }) => direction)
  return earlierTests.flatMap(({ directions }, i): Finding[] => {
    const same = directions?.length === now.length && directions.every((one) => now.includes(one))
    if (same) return []
    return [
      {
        rule: 'round-directions',
        severity: 'note',
        message:
          directions === undefined
            ? `the directions of earlier test ${i + 1} are not stated: the gain of the round may mix directions`
            : `earlier test ${i + 1} was run in ${directions.join(' and ')}, this one in ${now.join(' and ')}: part of the gain may be the difference of the directions`,
        ...citing(practiceSource),
        where: [`${at}.earlierTests[${i}].directions`],
        remedy: 'compare tests of the same directions',
      },
    ]
  })
}

function grew({ rounds: all }: WorkedLeaks, at: string): Finding[] {
  return all.flatMap(({ compared }, i): Finding[] => {
    const gain = compared.value('d_ab')
    if (gain >= 0) return []
    return [
      {
        rule: 'round-grew',
        severity: 'caution',
        message: `leakage grew by ${plain(-gain, 0)} m³/h in repair round ${i + 1}`,
        ...citing(practiceSource),
        value: gain,
        limit: 0,
        where: [`${at}.earlierTests[${i}].airLeakageRate50_m3_h`],
        remedy: 'look for something opened or pierced since, and for a difference in the preparation',
      },
    ]
  })
}
