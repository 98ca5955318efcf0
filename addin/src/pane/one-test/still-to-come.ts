import { counted, type Direction, type Finding } from '@draughtbook/shared-calc'

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
    `zero-flow pressure ${finding.where[0]?.endsWith('.zeroFlowAfter_Pa') ? 'after' : 'before'}`,
  'one-direction': () => 'the other direction',
  'both-directions': () => 'the other direction',
}
/** What a curve of too few readings shows is no fault yet. */
const OF_THE_CURVE = ['correlation', 'exponent-range', 'leakage-area-error']

/**
 * What is missing where nothing else is wrong with a test that is not valid; undefined where some finding stands that no
 * further entry answers.
 * @param runs the runs that the findings' fields name
 * @param typedFaults values typed into the table of readings that cannot be used, by their place
 */
export function stillToCome(
  findings: readonly Finding[],
  runs: readonly { readonly direction: Direction }[],
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
      several ? [words, directionIn(finding, runs)].filter(Boolean).join(', ') : words,
      where[0]?.startsWith('runs') ? 'runs' : (where[0] ?? 'runs'),
    )
  }
  const values = typed === 0 ? [] : [{ path: 'runs', label: `${counted(typed, 'value')} to check` }]
  return [...values, ...[...missing].map(([label, path]) => ({ path, label }))]
}

const RUN = /^runs\[(\d+)\]/
const runOf = ({ where }: Finding): string => RUN.exec(where[0] ?? '')?.[0] ?? ''

/** The direction of the run that a finding is about; undefined where it is about both, or about the whole test. */
function directionIn(
  { where }: Finding,
  runs: readonly { readonly direction: Direction }[],
): Direction | undefined {
  const named = new Set(where.flatMap((path) => runs[Number(RUN.exec(path)?.[1])]?.direction ?? []))
  return named.size === 1 ? [...named][0] : undefined
}
