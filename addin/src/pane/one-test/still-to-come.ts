import { counted, type Finding } from '@draughtbook/shared-calc'

/** What a result still needs, by its field. */
export interface Missing {
  path: string
  label: string
}

type Rule = (finding: Finding) => string

const more = ({ value = 0, limit = 0 }: Finding): number => limit - value

/** Findings that the next readings or entries answer, with what is to come in a few words. */
const TO_COME: Readonly<Record<string, Rule>> = {
  'too-few-readings': (finding) => counted(more(finding), 'more reading'),
  'highest-pressure': (finding) => `a reading at ${finding.limit ?? 50} Pa or above`,
  'reading-span': () => 'readings at other pressures',
  'station-repeats': () => 'more readings at each pressure',
  'zero-flow-samples': (finding) =>
    `zero-flow pressure ${/After/.test(finding.where[0] ?? '') ? 'after' : 'before'}`,
  'one-direction': () => 'the other direction',
  'both-directions': () => 'the other direction',
}
/** What a curve of too few readings shows is no fault yet. */
const OF_THE_CURVE = ['correlation', 'exponent-range', 'leakage-area-error']

/**
 * What is missing where nothing else is wrong with a test that is not valid; undefined where some finding stands that no
 * further entry answers.
 * @param typedFaults values typed into the table of readings that cannot be used, by their place
 */
export function stillToCome(
  findings: readonly Finding[],
  typedFaults: Readonly<Record<string, string>> = {},
): Missing[] | undefined {
  const grave = findings.filter(({ severity }) => severity === 'invalidates')
  const few = grave.filter(({ rule }) => rule === 'too-few-readings').map(runOf)
  const unusable = grave.filter(({ rule }) => rule === 'unusable-entry').length
  const typed = Object.keys(typedFaults).length
  const several = new Set(grave.map(runOf).filter(Boolean)).size > 1
  if (unusable > typed) return undefined
  const missing = new Map<string, string>()
  for (const finding of grave) {
    const { rule, where } = finding
    if (rule === 'unusable-entry' || (OF_THE_CURVE.includes(rule) && few.includes(runOf(finding)))) continue
    const words = TO_COME[rule]?.(finding)
    if (words === undefined) return undefined
    missing.set(
      several ? `${words}${directionIn(finding)}` : words,
      where[0]?.startsWith('runs') ? 'runs' : (where[0] ?? 'runs'),
    )
  }
  const values = typed === 0 ? [] : [{ path: 'runs', label: `${counted(typed, 'value')} to check` }]
  return [...values, ...[...missing].map(([label, path]) => ({ path, label }))]
}

const runOf = ({ where }: Finding): string => /^runs\[\d+\]/.exec(where[0] ?? '')?.[0] ?? ''

/** Named in the finding's own words, at their beginning or after them. */
const directionIn = ({ message }: Finding): string => {
  const direction = /(de)?pressurisation/i.exec(message)?.[0].toLowerCase()
  return direction === undefined ? '' : `, ${direction}`
}
