import { tableText } from '../../catalogue/findings/log/tables.js'
import { InputError } from '../../contract/problem.js'
import {
  type Finding,
  formatNeeded,
  parseRecord,
  RECORD_FORMAT,
  type TestRecord,
} from '../../contract/record/index.js'
import { Collector } from '../collector.js'
import type { Grid } from '../grid/grid.js'
import { LogError, type LogProblem } from '../problem.js'
import type { SeriesReading } from '../series/read-series.js'
import { readSeriesRuns } from '../series/read-series.js'
import { gathering, readDetails } from './details.js'
import { type DraftRun, readRuns } from './runs.js'
import type { Layout } from './schema.js'
import type { Scope } from './scope.js'
import { setPath } from './set-path.js'
import { splitTests } from './split-tests.js'

/** One test of a log, read. */
export interface ReadTest {
  /** Absent where problems stand in the way. */
  record?: TestRecord
  /** As far as it could be read, in the shape of a record. */
  draft: Readonly<Record<string, unknown>>
  /** Field path → cell address, for findings of the evaluation to name cells by. */
  cells: Readonly<Record<string, string>>
  findings: Finding[]
  problems: LogProblem[]
  /** Raw series the readings were taken from, with their stations, for drawing. */
  series: SeriesReading[]
}

/**
 * Reads every test of a log by its layout.
 * @throws LogError when the log does not hold the tests the layout describes; faults of single tests are their problems
 */
export function applyLayout(grid: Grid, layout: Layout): ReadTest[] {
  return splitTests(grid, layout).map((scope) => readTest(scope, layout))
}

function readTest(scope: Scope, layout: Layout): ReadTest {
  const collector = new Collector()
  // Each part is there, so that what it lacks is named field by field.
  const draft: Record<string, unknown> = { format: RECORD_FORMAT, building: {}, test: {}, conditions: {} }
  const runs: DraftRun[] = []
  const series: SeriesReading[] = []
  for (const run of layout.runs)
    gathering(collector, () => void runs.push(...readRuns(scope, layout, run, runs.length, collector)))
  for (const one of layout.series)
    gathering(collector, () => {
      const read = readSeriesRuns(scope, layout, one, runs.length, collector)
      runs.push(...read.runs)
      series.push(...read.series)
    })
  setPath(draft, 'runs', runs)
  readDetails(scope, layout, draft, collector)
  takeOutBlankRuns(runs, collector)
  draft.format = formatNeeded(draft)
  const record = finish(draft, collector)
  const findings = [...scope.grid.findings, ...collector.findings()]
  const { cells, problems } = collector
  return problems.length === 0 && record
    ? { record, draft, cells, findings, problems, series }
    : { draft, cells, findings, problems, series }
}

/** The record, checked against its schema; a missing field whose cell already has a problem is not named twice. */
function finish(draft: unknown, collector: Collector): TestRecord | undefined {
  try {
    return parseRecord(draft, collector.cells)
  } catch (error) {
    if (!(error instanceof InputError) || error instanceof LogError) throw error
    const known = collector.problems.map(({ path }) => path)
    for (const { path, cell, message, missing } of error.problems)
      if (!known.some((one) => one.startsWith(path) || path.startsWith(one)))
        collector.refuse('record-invalid', message, cell, path, missing && { missing })
    return undefined
  }
}

/**
 * Takes out runs for which nothing was entered: a form may have room for both directions when one was run. A note says
 * so; a log in which all are blank is left as it is, for the record's own checks to name what is missing.
 */
function takeOutBlankRuns(runs: DraftRun[], collector: Collector): void {
  if (runs.every(isBlank)) return
  for (let index = runs.length - 1; index >= 0; index--) {
    const run = runs[index]
    if (!run || !isBlank(run)) continue
    runs.splice(index, 1)
    collector.takeOutRun(index)
    collector.tell(tableText('log-blank-run', { direction: run.direction }), '', 'runs')
  }
}

function isBlank({ readings = [], zeroFlowBefore_Pa = [], zeroFlowAfter_Pa = [] }: DraftRun): boolean {
  return readings.length + zeroFlowBefore_Pa.length + zeroFlowAfter_Pa.length === 0
}
