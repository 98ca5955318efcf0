import {
  type AssessedTest,
  curvePoints,
  type EvaluatedRun,
  type Evaluation,
  evaluateWorked,
  type Finding,
  fewestReadings,
  governingCriterion,
  InputError,
  limitedName,
  lowestUsablePressure,
  type Problem,
  parseRecord,
  type Run,
  type RunningEstimate,
  runningEstimate,
  type TestRecord,
} from '@draughtbook/shared-calc'
import { type Grid, type PickedQuestion, pageText } from '@draughtbook/shared-calc/log'
import type { ChartData, ChartLimit, ChartRun } from '../chart/leakage-chart.js'
import { figure, signed } from '../pane/figures.js'
import type { TestEntries } from '../pane/one-test/entries.js'
import type { AskedValue } from './ask-about.js'
import { type NextPressure, nextPressure } from './next-pressure.js'
import { methodOf, readEntries } from './read-entries.js'
import { type RunningValue, runningValue } from './running-value.js'
import { type LiveSite, liveSite } from './site.js'
import type { UnderstoodTest } from './understand.js'

/** Everything the Test view shows that follows from what was typed and picked. */
export interface LiveResult {
  /** Present when a whole record could be read; also when some of its cells had to be left out. */
  record?: TestRecord
  evaluation?: Evaluation
  /** What the entries come to, in the shape of a record; perhaps unfinished. */
  draft: Record<string, unknown>
  /** Field path → cell. */
  cells: Record<string, string>
  /** What is missing or wrong before anything can be computed. */
  problems: Problem[]
  /** Of the entries and of the evaluation, gravest first. */
  findings: Finding[]
  /** Of the entries alone: what was converted, assumed or left out; for the workbook. */
  told?: Finding[]
  /** Some entry could not be used: the verdict is "not valid" and nothing is exported until it is corrected. */
  unusable: boolean
  estimates: RunningEstimate[]
  /** While there is no result: the last run's value, against the target's limit where it has one for it. */
  running?: RunningValue
  next: NextPressure[]
  chart: ChartData
  /** Values typed into fields that are asked about before they are used, by path. */
  asked: Record<string, AskedValue>
  /** What is wrong with values typed into the table of readings, by their place there. */
  typedFaults: Record<string, string>
  /** What picked cells leave open: units and signs. */
  questions: readonly PickedQuestion[]
  /** Before and on site: take-off, plan, preparation, leaks, readings so far. */
  site: LiveSite
}

/** The whole way from entries to what is shown. Pure: the same entries and cells give the same result. */
export function live(
  entries: TestEntries,
  grid: Grid | undefined,
  trace = false,
  understood?: UnderstoodTest,
): LiveResult {
  const read = readEntries(entries, grid, understood)
  const base = {
    draft: read.draft,
    cells: read.cells,
    unusable: read.told.unusable,
    asked: read.asked,
    typedFaults: read.typedFaults,
    questions: read.questions,
  }
  const estimates = read.unfinished.flatMap((run) => estimateOf(run, read.draft))
  const next = nextPressures([...read.runs, ...read.unfinished], read.draft)
  for (const run of read.unfinished)
    if (run.readings.length > 0 && read.runs.length > 0)
      read.told.tell(
        pageText('run-unfinished', {
          direction: run.direction,
          count: run.readings.length,
          fewest: fewestReadings(methodOf(read.draft)),
        }),
        '',
      )
  const siteOf = (whole?: { record: TestRecord; test: AssessedTest }) =>
    liveSite(read.draft, whole, [...read.runs, ...read.unfinished], read.faults)
  try {
    const record = parseRecord(read.draft, read.cells)
    // What reading had to leave out counts for the verdict: nothing is called met over a cell that was not read.
    const told = read.told.findings()
    const { evaluation, test } = evaluateWorked(record, { cells: read.cells, findings: told, trace })
    const findings = sorted(evaluation.findings)
    return {
      ...base,
      record,
      evaluation,
      told,
      problems: [],
      findings,
      estimates,
      next,
      chart: chartOf(evaluation, test, findings, estimates),
      site: siteOf({ record, test }),
    }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const chart = { runs: estimates.map(provisionalRun) }
    const running = runningValue(estimates)
    return {
      ...base,
      ...(running && { running }),
      problems: [...error.problems],
      findings: sorted(read.told.findings()),
      estimates,
      next,
      chart,
      site: siteOf(),
    }
  }
}

const RANK = { invalidates: 0, caution: 1, note: 2 } as const
const sorted = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity])

function estimateOf(run: Run, draft: Record<string, unknown>): RunningEstimate[] {
  if (run.readings.length === 0) return []
  const { building, conditions, flowDevice, target } = draft as Pick<
    TestRecord,
    'building' | 'conditions' | 'flowDevice' | 'target'
  >
  try {
    const estimate = runningEstimate({
      building,
      conditions,
      run,
      ...(flowDevice ? { flowDevice } : {}),
      ...(target && { target }),
    })
    return estimate ? [estimate] : []
  } catch (error) {
    if (error instanceof InputError) return []
    throw error
  }
}

function nextPressures(runs: readonly Run[], draft: Record<string, unknown>): NextPressure[] {
  const method = methodOf(draft)
  if (!method) return []
  return runs.map((run) => nextPressure(run, method, lowestUsablePressure(run, method)))
}

function chartOf(
  evaluation: Evaluation,
  test: AssessedTest,
  findings: readonly Finding[],
  estimates: readonly RunningEstimate[],
): ChartData {
  const runs = evaluation.runs.map((run, index): ChartRun => {
    const worked = test.runs[index]
    const curve = worked ? curvePoints(worked) : []
    return {
      direction: run.direction,
      points: pointsOf(run, index, findings),
      curve: curve.map((at) => [at.pressure_Pa, at.flow_m3_h, at.lower_m3_h, at.upper_m3_h] as const),
    }
  })
  const limit = limitOf(test)
  return { runs: [...runs, ...estimates.map(provisionalRun)], ...(limit ? { limit } : {}) }
}

function pointsOf(run: EvaluatedRun, index: number, findings: readonly Finding[]) {
  return run.readings.map(({ pressureDifference_Pa, envelopeFlow_m3_h, fittedFlow_m3_h }, place) => {
    const path = `runs[${index}].readings[${place}]`
    const off = (envelopeFlow_m3_h / fittedFlow_m3_h - 1) * 100
    return {
      pressure_Pa: pressureDifference_Pa,
      flow_m3_h: envelopeFlow_m3_h,
      label: `${run.direction}: ${figure(pressureDifference_Pa, 3)} Pa, ${figure(envelopeFlow_m3_h, 4)} m³/h, ${signed(off, 1)} % off the curve`,
      flagged: findings.some(
        ({ severity, where }) =>
          severity !== 'note' && where.some((one) => one === path || one.startsWith(`${path}.`)),
      ),
    }
  })
}

/** Where the limit that decides is in the chart: the flow that just meets it, at its own reference pressure. */
function limitOf(test: AssessedTest): ChartLimit | undefined {
  const main = governingCriterion(test)
  if (!main) return undefined
  const { quantity, referencePressure_Pa, flow } = main
  return {
    pressure_Pa: referencePressure_Pa,
    flow_m3_h: flow.value('q_t'),
    label: `limit of ${limitedName(quantity, referencePressure_Pa)}`,
  }
}

function provisionalRun({ direction, points, curve }: RunningEstimate): ChartRun {
  return {
    direction,
    points: points.map(({ pressure_Pa, flow_m3_h }) => ({
      pressure_Pa,
      flow_m3_h,
      label: `${direction}: ${figure(pressure_Pa, 3)} Pa, ${figure(flow_m3_h, 4)} m³/h`,
    })),
    curve: curve.map(({ pressure_Pa, flow_m3_h }) => [pressure_Pa, flow_m3_h, flow_m3_h, flow_m3_h] as const),
    provisional: true,
  }
}
