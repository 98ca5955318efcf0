import { type Evaluation, type Finding, limitedName, type Problem } from '@draughtbook/shared-calc'
import type { Host } from '../../host/host.js'
import type { TestAbout } from '../../kept/kept-test.js'
import { labelOf } from '../fields.js'
import { isUntouched, type TestEntries } from './entries.js'
import { stillToCome } from './still-to-come.js'
import type { TestState } from './test-state.js'

type Outcome = Evaluation['verdict']['outcome']

/** A value with the limit it is held against, each in the unit of the limit. */
export interface Against {
  quantity: string
  value: number
  unit: string
  limit?: number
  margin?: number
  label?: string
}

/** Where a test stands: what the line at the top says. */
export interface Standing {
  stage: 'empty' | 'log open' | 'unfinished' | 'running' | 'under way' | Outcome
  against?: Against
  /** What a result still needs, by its field. */
  missing: { path: string; label: string }[]
  /** The gravest finding that is more than a note. */
  worst?: Finding | undefined
  cautions: number
  invalidating: number
}

export const STAGE_WORDS: Readonly<Record<Standing['stage'], string>> = {
  empty: 'New test',
  'log open': 'Log open, not yet accepted',
  unfinished: 'No result yet',
  running: 'Running value, not a result',
  'under way': 'Test under way',
  meets: 'Meets the target',
  misses: 'Fails the target',
  'not valid': 'Not valid',
  'no target': 'No target set',
}

/** What every test needs before there is a result. */
const NEEDED = [
  'building.name',
  'building.volume_m3',
  'test.date',
  'conditions.indoorTemperature_C',
  'conditions.outdoorTemperature_C',
  'runs',
] as const

/**
 * Reads off the state where the test stands. Pure.
 * @param logOpen a log is open on the page; what it holds counts once it is accepted
 */
export function standingOf({ entries, result, evaluation }: TestState, logOpen = false): Standing {
  const findings = result?.findings ?? []
  const worst = findings.find(({ severity }) => severity !== 'note')
  const count = (severity: Finding['severity']): number =>
    findings.filter((finding) => finding.severity === severity).length
  const common = {
    cautions: count('caution'),
    invalidating: count('invalidates'),
    ...(worst && { worst }),
  }
  if (evaluation) {
    const { outcome, target, value, margin } = evaluation.verdict
    const toCome =
      outcome === 'not valid' ? stillToCome(findings, evaluation.runs, result?.typedFaults) : undefined
    const worst = findings.find(({ severity }) => severity === 'caution')
    return {
      ...common,
      // What is only still to come is no fault found.
      ...(toCome && { worst, invalidating: 0 }),
      stage: toCome ? 'under way' : outcome,
      missing: toCome ?? (target ? [] : [{ path: 'target', label: 'target' }]),
      against:
        target && value !== undefined && margin !== undefined
          ? {
              quantity: limitedName(target.quantity, target.referencePressure_Pa),
              value,
              unit: target.unit,
              limit: target.limit,
              margin,
              label: target.label,
            }
          : plainValue(evaluation.results),
    }
  }
  const missing = result ? missingOf(result.problems, result.running !== undefined) : neededOf(entries)
  const against = result?.running
  if (against) return { ...common, stage: 'running', missing, against }
  if (!result && logOpen && isUntouched(entries)) return { ...common, stage: 'log open', missing: [] }
  return { ...common, stage: result || !isUntouched(entries) ? 'unfinished' : 'empty', missing }
}

/** Whether a log lies open beside the test; in Excel a workbook always does. */
export const isLogOpen = ({ host }: { host: Pick<Host, 'kind' | 'hasWorkbook'> }): boolean =>
  host.kind === 'page' && host.hasWorkbook

/** Without a target: the air change rate where there is a volume. */
function plainValue({ n50, q50 }: Evaluation['results']): Against {
  return n50 ? { quantity: 'n50', ...n50 } : { quantity: 'q50', ...q50 }
}

const neededOf = ({ fields }: TestEntries): Standing['missing'] =>
  NEEDED.filter((path) => !fields[path]).map((path) => ({ path, label: labelOf(path).toLowerCase() }))

/** One entry a field; what is wrong with several readings is one. */
function missingOf(problems: readonly Problem[], running: boolean): Standing['missing'] {
  const found = new Map<string, string>()
  for (const { path } of problems) {
    const at = path.startsWith('runs') ? 'runs' : path
    // Readings that are there, but give no curve.
    const readings = path.startsWith('runs[') ? 'usable readings' : running ? 'more readings' : 'readings'
    found.set(at, at === 'runs' ? readings : labelOf(at).toLowerCase())
  }
  return [...found].map(([path, label]) => ({ path, label }))
}

/** What a list of tests shows of this one, read off its state. */
export function aboutTest(state: TestState): TestAbout {
  const { entries, result, evaluation } = state
  const { building, test } = (result?.draft ?? {}) as Record<string, Record<string, unknown> | undefined>
  const read = (value: unknown, path: string): string => {
    const entry = entries.fields[path]
    return typeof value === 'string' ? value : entry && 'text' in entry ? entry.text : ''
  }
  const date = read(test?.date, 'test.date')
  return {
    name: read(building?.name, 'building.name'),
    ...(date !== '' && { date }),
    step: state.step,
    standing: STAGE_WORDS[standingOf(state).stage],
    ...(result && { draft: result.draft }),
    ...(result?.record && { whole: true }),
    ...(evaluation && { airLeakageRate50_m3_h: evaluation.results.q50.value }),
  }
}
