import { type Finding, InputError, type Problem, type TestRecord } from '@draughtbook/shared-calc'
import {
  type Answers,
  builtInLayouts,
  type Grid,
  type Question,
  readGrid,
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
  /** As far as it could be read, in the shape of a record. */
  draft: Readonly<Record<string, unknown>>
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
  const { read, tests, chosen } = readChosen(grid, answers, fileDate)
  const { layoutUsed: layout, understood, findings } = read
  const own = {
    findings,
    problems: understood?.problems ?? [],
    ...(layout && { layout: layout.name }),
  }
  if (layout && !understood && read.problems.length > 0)
    return { ...own, tests: [], uses: layoutUses(layout), ...unfilled(read.problems) }
  return { ...own, tests, ...(chosen && { test: chosen }), uses: read.uses }
}

/** The log with the test that was chosen, or its only one. */
function readChosen(grid: Grid, { test: wanted, ...answers }: Answers, fileDate?: string) {
  const options = { layouts: builtInLayouts, fileDate, acceptProposal: true }
  const whole = readGrid(grid, { ...options, answers })
  const tests = whole.tests.map(({ key, name }) => ({ key, name }))
  const read =
    wanted === undefined || tests.length < 2
      ? whole
      : readGrid(grid, { ...options, answers: { ...answers, test: wanted } })
  const [only, another] = read.tests
  return { read, tests, chosen: another ? undefined : only }
}

/** The test that was accepted with these answers, as its cells are understood now; where they are not, with the reason. */
export function acceptedTest(grid: Grid, answers: Answers, fileDate?: string): UnderstoodTest {
  const none = { key: '', name: '', draft: {}, cells: {}, findings: [], questions: [] }
  try {
    const { read, tests, chosen } = readChosen(grid, answers, fileDate)
    const problems = read.understood?.problems ?? (chosen ? [] : read.problems)
    if (chosen) return { ...chosen, problems: [...chosen.problems, ...problems] }
    const which = `the log now holds ${tests.length} tests; look at it again and choose one`
    return { ...none, problems: problems.length > 0 ? problems : [{ path: 'runs', message: which }] }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { ...none, problems: error.problems }
  }
}

/** Said of a field whose cell is empty; anything else is wrong with what the cell holds. */
const EMPTY = /missing|expected object, received undefined|at least 3 readings/

/** What the cells of a layout do not hold yet, and what is wrong with those that hold something. */
function unfilled(found: readonly Problem[]): Pick<UnderstoodLog, 'problems' | 'waiting'> {
  const waiting = found.filter(({ message }) => EMPTY.test(message))
  return {
    problems: found.filter((problem) => !waiting.includes(problem)),
    waiting: [
      ...new Set(waiting.map(({ path }) => labelOf(path.startsWith('runs') ? 'runs' : path).toLowerCase())),
    ],
  }
}
