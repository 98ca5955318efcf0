import { fileText } from '../catalogue/findings/log/file.js'
import { remarkFinding } from '../catalogue/findings/remark.js'
import type { Finding } from '../contract/record/index.js'
import { sheetOf } from './grid/address.js'
import type { Grid } from './grid/grid.js'
import { interpretLog } from './interpret/interpret.js'
import type { Answers, Interpretation, InterpretedTest, Question, Use } from './interpret/interpretation.js'
import { testWithAnswers } from './interpret/test-with-answers.js'
import { applyLayout, type ReadTest } from './layout/apply.js'
import { chooseLayout } from './layout/fingerprint.js'
import { savedLayout } from './layout/saved-with.js'
import type { Layout } from './layout/schema.js'
import { openLog } from './open-log.js'
import { LogError, type LogProblem, problem } from './problem.js'
import { testUses } from './test-uses.js'

export interface ReadOptions {
  /** The layout to use, whatever its fingerprint. */
  layout?: Layout | undefined
  /** Layouts to choose from by fingerprint. */
  layouts?: readonly Layout[] | undefined
  /** Answers to what the log leaves open, by path; with `test`, one of several. */
  answers?: Answers | undefined
  /** Day the file was last changed, YYYY-MM-DD: taken, with a caution, where the log states none. */
  fileDate?: string | undefined
  /** Read a log that no layout fits as it is understood. Without it that is only shown. */
  acceptProposal?: boolean
}

/** One test of a log, read. */
export interface LogTest extends ReadTest {
  /** What `test` takes as an answer: the log's own name of the test, or its number. */
  key: string
  /** Name of the building or test as the log has it. */
  name: string
  /** What it leaves open: there is no record until that is answered. */
  questions: readonly Question[]
}

/** A log read: its tests, by which layout, and what stands in the way of others. */
export interface ReadLog {
  tests: LogTest[]
  layoutUsed?: Layout
  /** How a log that no described layout fits was understood. */
  understood?: Interpretation
  /** What each part of the log was used as, or why it was left out. */
  uses: readonly Use[]
  /** Open points of all tests, each once. */
  questions: readonly Question[]
  /** What concerns the whole log. */
  findings: readonly Finding[]
  /** Faults of all tests. */
  problems: LogProblem[]
}

/**
 * Reads a test log: bytes in, records with findings and cells out. Nothing is kept and nothing else is read.
 * @throws LogError when the file cannot be opened, or the layout does not suit it
 */
export function readLog(bytes: Uint8Array, fileName: string, options: ReadOptions = {}): ReadLog {
  const grid = openLog(bytes, fileName, options.layout?.decimal ?? decimalIn(options.answers))
  const read = readGrid(grid, options)
  // A text file's decimal sign bears on its cells: a layout found by fingerprint may state another.
  const decimal = read.layoutUsed?.decimal ?? decimalIn(read.layoutUsed?.answers)
  return grid.kind === 'text' && decimal && decimal !== grid.decimal && !options.layout
    ? readGrid(openLog(bytes, fileName, decimal), options)
    : read
}

const decimalIn = (answers: Answers | undefined): '.' | ',' | undefined =>
  answers?.decimal === '.' || answers?.decimal === ',' ? answers.decimal : undefined

/** The same for cells that are at hand: an open workbook, as the pane and `POST /v1/readings` have them. */
export function readGrid(grid: Grid, options: ReadOptions = {}): ReadLog {
  const { layout, layouts = [], answers = {} } = options
  const saved = layout ? undefined : savedLayout(grid)
  const known = layout ?? saved ?? chooseLayout(grid, layouts)
  const why = layout ? 'given' : saved ? 'saved' : 'fits'
  if (known && !known.answers) return byLayout(grid, known, answers, why)
  const understood = interpretLog(grid, {
    answers: { ...known?.answers, ...answers },
    ...(options.fileDate === undefined ? {} : { fileDate: options.fileDate }),
  })
  if (!known && !options.acceptProposal)
    return { ...asUnderstood(understood, undefined), tests: [], problems: [unconfirmed(understood)] }
  return {
    ...asUnderstood(understood, known),
    ...(known && { layoutUsed: known }),
  }
}

function byLayout(grid: Grid, layout: Layout, given: Answers, why: Why): ReadLog {
  const { test: wanted, ...answers } = given
  const all = applyLayout(grid, layout).map((read, index): LogTest => {
    const test = read.record ? testWithAnswers({ ...read, record: read.record }, answers) : read
    return {
      ...test,
      key: String(index + 1),
      name: read.record?.building.name ?? '',
      findings: [layoutNote(layout, why, read.cells), ...test.findings],
      questions: [],
    }
  })
  const tests = wanted === undefined ? all : all.filter(({ key, name }) => key === wanted || name === wanted)
  const missing = all.length > 0 && tests.length === 0
  return {
    tests,
    layoutUsed: layout,
    uses: tests.flatMap(({ cells }) => testUses(cells)),
    questions: [],
    findings: grid.findings,
    problems: [
      ...tests.flatMap(({ problems }) => problems),
      ...(missing ? [noSuchTest(wanted ?? '', all)] : []),
    ],
  }
}

const noSuchTest = (wanted: string, all: readonly LogTest[]): LogProblem =>
  problem(
    'not-found',
    `there is no test called "${wanted}" in this log: it has ${all.map(({ key, name }) => `"${key}" (${name})`).join(', ')}`,
    { path: 'test' },
  )

/** Each test with what was said about the whole log, so that no finding is lost where one of them is evaluated alone. */
function asUnderstood(understood: Interpretation, known: Layout | undefined): ReadLog {
  const { tests, uses, questions, findings } = understood
  return {
    understood,
    uses,
    questions,
    findings,
    tests: tests.map((test) => ({
      ...test,
      problems: [...test.problems] as LogProblem[],
      series: [...test.series],
      findings: [
        ...(known ? [layoutNote(known, 'answers', test.cells)] : []),
        ...test.findings,
        ...findings.filter((one) => !test.findings.includes(one)),
        ...(tests.length > 1 ? [oneOf(tests, test)] : []),
      ],
    })),
    problems: [...understood.problems, ...tests.flatMap(({ problems }) => problems)] as LogProblem[],
  }
}

const oneOf = (tests: readonly InterpretedTest[], { key }: InterpretedTest): Finding =>
  remarkFinding(fileText('log-one-of-several', { tests: tests.map((one) => one.key), own: key }))

type Why = 'given' | 'saved' | 'fits' | 'answers'

/** Names the sheets that were read, so that whoever checks the layout sees where it looked. */
const layoutNote = ({ name }: Layout, why: Why, cells: LogTest['cells']): Finding =>
  remarkFinding(
    fileText('log-layout', { name, why, sheets: [...new Set(Object.values(cells).map(sheetOf))] }),
  )

function unconfirmed({ tests, questions }: Interpretation): LogProblem {
  const open = questions.length > 0 ? `; open: ${questions.map(({ text }) => text).join(' ')}` : ''
  return problem(
    'no-layout',
    tests.length > 0
      ? `no layout fits this log. It can be read by its headings: check that and save a layout, or accept it${open}`
      : 'no layout fits this log, and no readings were found in it: describe the log in a layout file',
  )
}

/** The tests of a log that must be whole. @throws LogError with every problem of it */
export function testsOf({
  tests,
  problems,
}: ReadLog): Required<Pick<ReadTest, 'record' | 'cells' | 'findings'>>[] {
  if (problems.length > 0) throw new LogError(problems)
  return tests.flatMap(({ record, cells, findings }) => (record ? [{ record, cells, findings }] : []))
}
