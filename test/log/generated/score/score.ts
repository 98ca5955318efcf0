import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import type { GeneratedLog } from '../generate.js'
import type { TestTruth } from '../truth/of-test.js'
import { answerOf, kindOf } from './answer.js'
import type { AskedQuestion, Reader, ReadOutcome } from './reader.js'

export type Verdict =
  /** Right figures at once, and everything said that must be. */
  | 'right'
  /** A question that the log leaves open, and right once it is answered. */
  | 'justly asked'
  /** A question that the log answers itself; right once it is answered. */
  | 'needlessly asked'
  /** Right figures, but what had to be asked was guessed. */
  | 'guessed'
  /** Right figures, but something left out or contradicted was not named. */
  | 'unsaid'
  /** Asked, and still not right when answered truly. */
  | 'asked in vain'
  | 'refused'
  /** A figure that is wrong, with no question. */
  | 'silently wrong'

export interface Score {
  readonly log: GeneratedLog
  readonly verdict: Verdict
  /** Questions until the log was read. */
  readonly questions: number
  /** What is wrong, for those who may look at it. */
  readonly why: string
}

const MOST_ROUNDS = 4
/**
 * A share of n50. Truth is worked out from the figures as written, so nothing but the rounding of constants is allowed: a
 * lost zero-flow value alone moves n50 by some thousandths. A station of a series is averaged over another stretch than
 * the one it was drawn from.
 */
const TOLERANCE = 0.0005
const SERIES_TOLERANCE = 0.01

/** Reads a log as a careful user would: answers what is asked, then looks at every figure. */
export async function scoreLog(log: GeneratedLog, read: Reader): Promise<Score> {
  const bytes = await log.write()
  const answers: Record<string, string> = {}
  const asked: AskedQuestion[] = []
  let outcome = read(bytes, log.fileName, answers)
  const done = (verdict: Verdict, why = '') => ({ log, verdict, questions: asked.length, why })
  for (let round = 0; round < MOST_ROUNDS && outcome.questions.length > 0; round++) {
    for (const question of outcome.questions) {
      const answer = answerOf(question, log)
      asked.push(question)
      if (answer === undefined) return done('asked in vain', `no true answer to ${describe(question)}`)
      answers[question.path] = answer
    }
    outcome = read(bytes, log.fileName, answers)
  }
  const fault = faultOf(outcome, log, answers.test !== undefined)
  if (asked.length > 0) {
    const told = asked.map(describe).join('; ')
    if (fault) return done('asked in vain', `${told}; then ${fault.why}`)
    const { mustAsk, mayAsk } = log.recipe
    const open = [...mustAsk, ...mayAsk]
    const needless = asked.filter((question) => {
      const kind = kindOf(question)
      return kind === undefined || !open.includes(kind)
    })
    return needless.length > 0
      ? done('needlessly asked', needless.map(describe).join('; '))
      : done('justly asked', told)
  }
  if (fault) return done(fault.computed ? 'silently wrong' : 'refused', fault.why)
  if (log.recipe.mustAsk.length > 0)
    return done('guessed', `nobody can know the ${log.recipe.mustAsk.join(', ')}`)
  const silent = log.recipe.mustSay.filter((words) => !said(outcome).some((text) => words.test(text)))
  return silent.length > 0 ? done('unsaid', `nothing said like ${silent.join(', ')}`) : done('right')
}

const describe = ({ path, text }: AskedQuestion) => `${path}: ${text}`

interface Fault {
  readonly computed: boolean
  readonly why: string
}

/** What is not as it should be, over all tests of the log or the one chosen. */
function faultOf({ tests, problems }: ReadOutcome, log: GeneratedLog, chosen: boolean): Fault | undefined {
  const records = tests.flatMap(({ record }) => record ?? [])
  const messages = [...problems, ...tests.flatMap((test) => test.problems)].map(({ message }) => message)
  if (records.length === 0)
    return { computed: false, why: messages.slice(0, 3).join('; ') || 'nothing was read' }
  const wanted = chosen ? [bestMatch(log.tests, records[0])] : log.tests
  if (!chosen && records.length !== wanted.length)
    return {
      computed: true,
      why: `${records.length} tests for ${wanted.length}; ${messages.slice(0, 2).join('; ')}`,
    }
  const faults = wanted.flatMap((truth, index) => faultOfTest(records[index], truth, log) ?? [])
  return faults[0]
}

/** The test that was meant, by its volume and readings: names are the reader's own. */
function bestMatch(tests: readonly TestTruth[], record: TestRecord | undefined): TestTruth {
  const off = ({ volume_m3, runs }: TestTruth) =>
    Math.abs(volume_m3 - (record?.building.volume_m3 ?? 0)) +
    Math.abs((runs[0]?.readings ?? 0) - (record?.runs[0]?.readings.length ?? 0))
  return [...tests].sort((one, other) => off(one) - off(other))[0] as TestTruth
}

function faultOfTest(record: TestRecord | undefined, truth: TestTruth, log: GeneratedLog): Fault | undefined {
  if (!record) return { computed: false, why: `the test ${truth.name} is missing` }
  let n50: number | undefined
  try {
    n50 = evaluate(record).results.n50?.value
  } catch (error) {
    return { computed: false, why: String(error) }
  }
  const tolerance = log.recipe.structure === 'series' ? SERIES_TOLERANCE : TOLERANCE
  const directions = (runs: readonly { direction: string }[]) =>
    runs
      .map(({ direction }) => direction)
      .sort()
      .join()
  const wrong = (what: string, is: unknown, should: unknown) => ({
    computed: true,
    why: `${what} ${String(is)} instead of ${String(should)}`,
  })
  if (n50 === undefined || Math.abs(n50 / truth.n50_1_h - 1) > tolerance)
    return wrong('n50', n50?.toFixed(4), truth.n50_1_h.toFixed(4))
  if (directions(record.runs) !== directions(truth.runs))
    return wrong('directions', directions(record.runs), directions(truth.runs))
  for (const { direction, readings, zeroFlowValues } of truth.runs) {
    const count = record.runs.find((run) => run.direction === direction)?.readings.length
    if (count !== readings) return wrong(`readings of ${direction}`, count, readings)
    const run = record.runs.find((one) => one.direction === direction)
    const values = [run?.zeroFlowBefore_Pa?.length ?? 0, run?.zeroFlowAfter_Pa?.length ?? 0].join(' and ')
    const written = zeroFlowValues.join(' and ')
    if (log.recipe.structure !== 'series' && !log.recipe.induced && values !== written)
      return wrong(`zero-flow values of ${direction}`, values, written)
  }
  if (log.recipe.missing.includes('date') || record.test.date === truth.date) return undefined
  return wrong('date', record.test.date, truth.date)
}

function said({ tests, findings, uses, problems }: ReadOutcome): string[] {
  return [
    ...findings.map(({ message }) => message),
    ...tests.flatMap((test) => test.findings.map(({ message }) => message)),
    ...uses.flatMap(({ heading, ignoredBecause }) => (ignoredBecause ? `${heading}: ${ignoredBecause}` : [])),
    ...problems.map(({ message }) => message),
    ...tests.flatMap(({ record }) => (record ? evaluate(record).findings.map(({ message }) => message) : [])),
  ]
}
