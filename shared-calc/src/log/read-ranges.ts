import { z } from 'zod'
import { fileText } from '../catalogue/findings/log/file.js'
import { remarkFinding } from '../catalogue/findings/remark.js'
import { check, Finding, pathText, placeWords, TestRecord } from '../contract/record/index.js'
import type { Grid } from './grid/grid.js'
import { CellRange, gridFromRanges } from './grid/ranges.js'
import { answersLayout } from './interpret/answers-layout.js'
import type { Answers, Interpretation, Question } from './interpret/interpretation.js'
import { Layout, parseLayout } from './layout/schema.js'
import { LogError, type LogProblem, problem } from './problem.js'
import { type ReadLog, readGrid, testsOf } from './read-log.js'
import { ToldStation, toldStations } from './series/told-stations.js'

/** Cells of an open workbook to be read as a test log. */
export const ReadingsRequest = z.strictObject({
  ranges: z.array(CellRange).min(1).max(500),
  /** The layout to use. Without it the library's are tried, then the log is understood from its own words. */
  layout: Layout.optional(),
  /** Read a log that no layout fits as it is understood. */
  acceptProposal: z.boolean().optional(),
  /** Answers to what the log leaves open, by the path of the question. */
  answers: z.record(z.string().max(120), z.string().max(4000)).optional(),
  /** The workbook counts its days from 1904. */
  date1904: z.boolean().optional(),
  fileName: z.string().max(255).optional(),
})

const Guess = z.strictObject({
  path: z.string(),
  cells: z.array(z.string()),
  reason: z.string(),
  /** Own scale, no source: lower where the log leaves a question open about these cells. */
  confidence: z.number(),
})

const Open = z.strictObject({
  /** Where the answer goes in `answers`. */
  path: z.string(),
  text: z.string(),
  cells: z.array(z.string()),
  choices: z.array(z.strictObject({ value: z.string(), label: z.string(), reason: z.string().optional() })),
  /** An answer as it may be typed. */
  example: z.string().optional(),
})

/** The tests read; or, where no layout fits and none was accepted, only what was proposed. */
export const ReadingsAnswer = z.strictObject({
  tests: z.array(
    z.strictObject({
      record: TestRecord,
      /** Field path → cell address. */
      cells: z.record(z.string(), z.string()),
      findings: z.array(Finding),
      /** Stations of the raw series the readings come from, one list for each series. */
      stations: z.array(z.array(ToldStation)),
    }),
  ),
  layoutUsed: Layout.optional(),
  proposal: z
    .strictObject({
      layout: Layout.optional(),
      guesses: z.array(Guess),
      notFound: z.array(z.string()),
      questions: z.array(z.string()),
      /** The questions with what to answer. */
      open: z.array(Open).optional(),
      confidence: z.number(),
    })
    .optional(),
})
export type ReadingsAnswer = z.infer<typeof ReadingsAnswer>

/**
 * Reads ranges of cells as a test log: what `POST /v1/readings` does, with the one reader of the command line and the pane.
 * @param layouts - layouts to choose from where the request names none
 * @throws LogError with every fault, each naming its field and cell
 */
export function readRanges(input: unknown, layouts: readonly Layout[] = []): ReadingsAnswer {
  const parsed = check(ReadingsRequest, input)
  if (!parsed.success)
    throw new LogError(
      parsed.error.issues.map(({ path, message }) =>
        problem('layout-invalid', message, { path: pathText(path) }),
      ),
    )
  const { ranges, layout, acceptProposal = false, answers = {}, date1904 = false, fileName } = parsed.data
  const grid = gridFromRanges(ranges, { fileName: fileName ?? 'open workbook', date1904 })
  const read = readGrid(grid, { layout, layouts, answers, acceptProposal })
  const { layoutUsed, understood } = read
  const proposal = understood && !layoutUsed ? proposalOf(grid, understood, answers) : undefined
  if (proposal && !acceptProposal) return { tests: [], proposal }
  refuseOpen(read)
  return {
    tests: testsOf(read).map(({ record, cells, findings }, index) => ({
      record,
      cells: { ...cells },
      findings: proposal ? [ACCEPTED, ...findings] : findings,
      stations: (read.tests[index]?.series ?? []).map(toldStations),
    })),
    ...((layoutUsed ?? proposal?.layout) ? { layoutUsed: layoutUsed ?? proposal?.layout } : {}),
    ...(proposal ? { proposal } : {}),
  }
}

const ACCEPTED = remarkFinding(fileText('log-proposal'))

/** Nothing is computed on an open question: each is a problem that says how to answer it. */
function refuseOpen({ questions, problems }: ReadLog): void {
  if (questions.length > 0) throw new LogError([...questions.map(asProblem), ...problems])
}

function asProblem({ path, text, cells, choices, example }: Question): LogProblem {
  const likely = choices.map(({ value }) => JSON.stringify(value)).join(' or ')
  const [cell] = cells
  const typed =
    likely && example !== undefined ? `, or your own value, for example ${JSON.stringify(example)}` : ''
  return problem(
    'open-question',
    `${text} Answer with "answers": {${JSON.stringify(path)}: ${likely || JSON.stringify(example ?? '…')}}${typed}`,
    { path, ...(cell === undefined ? {} : { cell }) },
  )
}

const SURE = 0.9
const ASKED = 0.5

/** What was understood, in the form of the proposals that the answer has always held. */
function proposalOf(
  grid: Grid,
  read: Interpretation,
  answers: Answers,
): NonNullable<ReadingsAnswer['proposal']> {
  const { tests, uses, questions } = read
  const asked = new Set(questions.flatMap(({ cells }) => cells))
  const guesses = uses.flatMap(({ usedAs, cells, heading, path = 'runs', reason }) => {
    if (usedAs === undefined) return []
    const own = cells.split(/,\s*/)
    const why = [`used as ${usedAs}`, heading && `headed ${JSON.stringify(heading)}`, reason]
    return [
      {
        path,
        cells: own,
        reason: why.filter(Boolean).join('; '),
        confidence: own.some((cell) => asked.has(cell)) ? ASKED : SURE,
      },
    ]
  })
  return {
    ...(tests.length > 0 && {
      layout: parseLayout(answersLayout(grid, read, answers, `understood: ${grid.fileName}`)),
    }),
    guesses,
    notFound: [
      ...(tests.length === 0 ? ['table of pressures and flows'] : []),
      ...questions.filter(({ cells }) => cells.length === 0).map(({ path }) => placeWords(path, {})),
    ],
    questions: questions.map(({ text }) => text),
    open: questions.map(({ path, text, cells, choices, example }) => ({
      path,
      text,
      cells: [...cells],
      choices: choices.map((choice) => ({ ...choice })),
      ...(example === undefined ? {} : { example }),
    })),
    confidence: tests.length === 0 ? 0 : questions.length > 0 ? ASKED : SURE,
  }
}
