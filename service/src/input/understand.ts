import type { CellMap, Finding, TestRecord } from '@draughtbook/shared-calc'
import {
  type Answers,
  fileText,
  type Grid,
  type Interpretation,
  interpretLog,
  LogError,
  type LogProblem,
  remarkFinding,
} from '@draughtbook/shared-calc/log'
import { OpenQuestions } from './open-questions.js'

/** One test as read: its record, where its fields stood, and what reading it had to convert or leave out. */
export interface ReadTest {
  readonly record: TestRecord
  readonly cells: CellMap
  readonly findings: readonly Finding[]
}

export interface UnderstandOptions {
  readonly answers?: Answers | undefined
  /** Day the file was last changed, YYYY-MM-DD. */
  readonly fileDate?: string | undefined
  /** The finding that names the layout whose answers were used. */
  readonly told?: Finding | undefined
}

/**
 * Reads a log that no layout describes.
 * @throws OpenQuestions where it leaves something open; LogError where it cannot be read
 */
export function understand(grid: Grid, { answers, fileDate, told }: UnderstandOptions): ReadTest[] {
  const read = interpretLog(grid, { ...(answers && { answers }), ...(fileDate && { fileDate }) })
  refuseFaults(read)
  const several = read.tests.length > 1
  return read.tests.flatMap(({ record, cells, findings, key }) =>
    record
      ? [
          {
            record,
            cells,
            findings: [
              ...(told ? [told] : []),
              ...findings,
              ...read.findings.filter((one) => !findings.includes(one)),
              ...(several ? [oneOf(read, key)] : []),
            ],
          },
        ]
      : [],
  )
}

/** Faults and questions of all tests at once. */
export function refuseFaults(read: Interpretation): void {
  const problems = [...read.problems, ...read.tests.flatMap((test) => test.problems)]
  if (read.questions.length > 0) throw new OpenQuestions(read.questions, read, problems)
  if (problems.length > 0) throw new LogError(problems as LogProblem[])
}

const oneOf = ({ tests }: Interpretation, key: string): Finding =>
  remarkFinding(fileText('log-one-of-several', { tests: tests.map((one) => one.key), own: key }))
