import { type Finding, InputError, type Problem, type TestRecord } from '@draughtbook/shared-calc'
import {
  type Answers,
  answersLayout,
  builtInLayouts,
  chooseLayout,
  type Grid,
  Layout,
  type LayoutInput,
  parseLayout,
  type Question,
  type ReadOptions,
  readGrid,
  savedLayout,
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
  /** The layout holds answers kept on this device. */
  kept?: true
  /** The layout of the firm's library that describes it, to be kept with the test. */
  firms?: Layout
  /** All answers it was read with, those of a layout included. */
  answers: Answers
  /** The answers as a layout for other logs of this make; absent where a layout describes them already. */
  keep?: (name: string) => LayoutInput
  /** What the cells of the layout do not hold yet, in words. */
  waiting?: readonly string[]
}

/** Layouts to choose from beside those that come with the tool and the workbook. */
export interface OwnLayouts {
  /** Kept on this device, the newest first. */
  readonly kept?: readonly LayoutInput[]
  /** From the firm's library. */
  readonly firms?: readonly LayoutInput[]
}

/**
 * Reads the log as the command line does: by a layout that fits, else as it is understood.
 * @param answers by path, as with `--set`; `test` chooses one of several
 * @throws LogError where the log cannot be read at all
 */
export function understandLog(
  grid: Grid,
  answers: Answers,
  fileDate?: string,
  own: OwnLayouts = {},
): UnderstoodLog {
  const firms = readable(own.firms)
  const kept = savedLayout(grid) ? undefined : readable(own.kept).find((one) => chooseLayout(grid, [one]))
  const layouts = [
    ...firms.filter(({ name }) => !builtInLayouts.some((one) => one.name === name)),
    ...builtInLayouts,
  ]
  const { read, tests, chosen } = readChosen(grid, answers, fileDate, { layouts, layout: kept })
  const { layoutUsed: layout, understood, findings } = read
  const common = {
    findings,
    problems: understood?.problems ?? [],
    ...(layout && { layout: layout.name }),
    ...(layout && layout === kept && { kept: true as const }),
    ...(layout && firms.includes(layout) && !layout.answers && { firms: layout }),
    answers: { ...layout?.answers, ...answers },
  }
  if (layout && !understood && read.problems.length > 0)
    return { ...common, tests: [], uses: layoutUses(layout), ...unfilled(read.problems) }
  return {
    ...common,
    tests,
    ...(chosen && { test: chosen }),
    uses: read.uses,
    ...(understood && { keep: (name: string) => answersLayout(grid, understood, common.answers, name) }),
  }
}

/** Layouts that can be read; one that cannot is not a reason to read no log. */
const readable = (layouts: readonly LayoutInput[] = []): Layout[] =>
  layouts.flatMap((layout) => {
    const parsed = Layout.safeParse(layout)
    return parsed.success ? [parsed.data] : []
  })

/** The log with the test that was chosen, or its only one. */
function readChosen(
  grid: Grid,
  { test: wanted, ...answers }: Answers,
  fileDate: string | undefined,
  given: Pick<ReadOptions, 'layout' | 'layouts'>,
) {
  const options = { ...given, fileDate, acceptProposal: true }
  const whole = readGrid(grid, { ...options, answers })
  const tests = whole.tests.map(({ key, name }) => ({ key, name }))
  const read =
    wanted === undefined || tests.length < 2
      ? whole
      : readGrid(grid, { ...options, answers: { ...answers, test: wanted } })
  const [only, another] = read.tests
  return { read, tests, chosen: another ? undefined : only }
}

/** The test that was accepted like this, as its cells are understood now; where they are not, with the reason. */
export function acceptedTest(
  grid: Grid,
  answers: Answers,
  fileDate?: string,
  firms?: LayoutInput,
): UnderstoodTest {
  const none = { key: '', name: '', draft: {}, cells: {}, findings: [], questions: [] }
  try {
    const given = firms ? { layout: parseLayout(firms) } : { layouts: builtInLayouts }
    const { read, tests, chosen } = readChosen(grid, answers, fileDate, given)
    const problems = read.understood?.problems ?? (chosen ? [] : read.problems)
    if (chosen) return { ...chosen, problems: [...chosen.problems, ...problems] }
    const which = `the log now holds ${tests.length} tests; read it again and choose one`
    return { ...none, problems: problems.length > 0 ? problems : [{ path: 'runs', message: which }] }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { ...none, problems: error.problems }
  }
}

/** What the cells of a layout do not hold yet, and what is wrong with those that hold something. */
function unfilled(found: readonly Problem[]): Pick<UnderstoodLog, 'problems' | 'waiting'> {
  const waiting = found.filter(({ missing }) => missing)
  return {
    problems: found.filter((problem) => !waiting.includes(problem)),
    waiting: [
      ...new Set(waiting.map(({ path }) => labelOf(path.startsWith('runs') ? 'runs' : path).toLowerCase())),
    ],
  }
}
