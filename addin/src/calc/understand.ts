import { type Finding, InputError, type Problem, type TestRecord } from '@draughtbook/shared-calc'
import {
  type Answers,
  answeredRecord,
  builtInLayouts,
  chooseLayout,
  type Grid,
  interpretLog,
  type Layout,
  type Question,
  readGrid,
  savedLayout,
  testsOf,
  type Use,
} from '@draughtbook/shared-calc/log'
import { labelOf } from '../pane/fields.js'
import { layoutUses } from './layout-uses.js'

/** One test of a log, as the command line would read it. */
export interface UnderstoodTest {
  key: string
  name: string
  /** Whole, unless a question is open or a problem stands in the way. */
  record?: TestRecord
  /** Field path → cell address. */
  cells: Readonly<Record<string, string>>
  findings: readonly Finding[]
  questions: readonly Question[]
  problems: readonly Problem[]
}

/** A log as it is understood, with the test that was chosen. */
export interface UnderstoodLog {
  /** Every test of the log, by its key; one to choose where there are several. */
  tests: readonly { key: string; name: string }[]
  /** The one test, or the chosen one of several. */
  test?: UnderstoodTest
  uses: readonly Use[]
  findings: readonly Finding[]
  problems: readonly Problem[]
  /** Name of the layout it was read by, where one fits. */
  layout?: string
  /** What the cells of the layout do not hold yet, in words. */
  waiting?: readonly string[]
}

/**
 * Reads the log as the command line does: by a layout that fits, else as it is understood.
 * @param answers by path, as with `--set`; `test` chooses one of several
 * @throws LogError where the log cannot be read at all
 */
export function understandLog(grid: Grid, answers: Answers, fileDate?: string): UnderstoodLog {
  const layout = savedLayout(grid) ?? chooseLayout(grid, builtInLayouts)
  if (layout && !layout.answers) return byLayout(grid, layout, answers)
  const { test, ...others } = { ...layout?.answers, ...answers }
  const dated = fileDate === undefined ? {} : { fileDate }
  const whole = interpretLog(grid, { answers: others, ...dated })
  const tests = whole.tests.map(({ key, name }) => ({ key, name }))
  const read =
    test === undefined || tests.length < 2
      ? whole
      : interpretLog(grid, { answers: { ...others, test }, ...dated })
  const [only, another] = read.tests
  return {
    tests,
    ...(only &&
      !another && { test: { ...only, findings: [...new Set([...only.findings, ...read.findings])] } }),
    uses: read.uses,
    findings: read.findings,
    problems: read.problems,
    ...(layout && { layout: layout.name }),
  }
}

/** The test that was accepted with these answers, as its cells are understood now; where they are not, with the reason. */
export function acceptedTest(grid: Grid, answers: Answers, fileDate?: string): UnderstoodTest {
  const none = { key: '', name: '', cells: {}, findings: [], questions: [] }
  try {
    const { test, problems, tests } = understandLog(grid, answers, fileDate)
    if (test) return { ...test, problems: [...test.problems, ...problems] }
    const which = `the log now holds ${tests.length} tests; look at it again and choose one`
    return { ...none, problems: problems.length > 0 ? problems : [{ path: 'runs', message: which }] }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { ...none, problems: error.problems }
  }
}

/** Said of a field whose cell is empty; anything else is wrong with what the cell holds. */
const EMPTY = /missing|expected object, received undefined|at least 3 readings/

/** A log by a layout of which some cells are not filled in yet. Rethrows what is no matter of the log. */
function unfilled(error: unknown, grid: Grid, layout: Layout): UnderstoodLog {
  if (!(error instanceof InputError)) throw error
  const waiting = error.problems.filter(({ message }) => EMPTY.test(message))
  return {
    tests: [],
    uses: layoutUses(layout),
    findings: grid.findings,
    problems: error.problems.filter((problem) => !waiting.includes(problem)),
    layout: layout.name,
    waiting: [
      ...new Set(waiting.map(({ path }) => labelOf(path.startsWith('runs') ? 'runs' : path).toLowerCase())),
    ],
  }
}

function byLayout(grid: Grid, layout: Layout, answers: Answers): UnderstoodLog {
  try {
    return filledIn(grid, layout, answers)
  } catch (error) {
    return unfilled(error, grid, layout)
  }
}

function filledIn(grid: Grid, layout: Layout, { test: wanted, ...answers }: Answers): UnderstoodLog {
  const found = testsOf(readGrid(grid, { layout })).map((test, index) => ({
    key: String(index + 1),
    ...test,
  }))
  const chosen = found.length === 1 ? found[0] : found.find(({ key }) => key === wanted)
  return {
    tests: found.map(({ key, record }) => ({ key, name: record.building.name })),
    ...(chosen && {
      test: {
        key: chosen.key,
        name: chosen.record.building.name,
        record: answeredRecord(chosen.record, answers),
        cells: chosen.cells,
        findings: chosen.findings,
        questions: [],
        problems: [],
      },
    }),
    uses: chosen ? usesOf(chosen.cells) : [],
    findings: grid.findings,
    problems: [],
    layout: layout.name,
  }
}

/** Where a layout says what each cell is: one use for each field, one for each column of readings. */
function usesOf(cells: Readonly<Record<string, string>>): Use[] {
  const uses = new Map<string, Use>()
  for (const [path, cell] of Object.entries(cells)) {
    const column = path.replaceAll(/(readings|zeroFlowBefore_Pa|zeroFlowAfter_Pa)\[\d{1,6}\]/g, '$1[]')
    const known = uses.get(column)
    uses.set(column, {
      cells: known ? `${known.cells.split(':')[0]}:${cell.split('!').at(-1)}` : cell,
      heading: '',
      usedAs: column.startsWith('runs[') ? roleOf(column) : labelOf(path),
      path: column,
    })
  }
  return [...uses.values()]
}

function roleOf(column: string): string {
  const run = `run ${Number(/\d/.exec(column)?.[0] ?? 0) + 1}`
  const roles: readonly (readonly [string, string])[] = [
    ['pressure_Pa', 'pressure across the building'],
    ['flow_m3_h', 'air flow'],
    ['devicePressure_Pa', 'device pressure'],
    ['range', 'range of the device'],
    ['zeroFlowBefore_Pa', 'zero-flow pressure before the readings'],
    ['zeroFlowAfter_Pa', 'zero-flow pressure after the readings'],
  ]
  const last = column.split('.').at(-1)?.replace('[]', '')
  return `${roles.find(([name]) => name === last)?.[1] ?? last}, ${run}`
}
