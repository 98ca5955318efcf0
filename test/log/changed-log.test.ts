import { type Evaluation, evaluate } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Change, changed } from './generated/change'
import { type GeneratedLog, writeSheets } from './generated/generate'
import { generatedLogs } from './generated/recipes'
import { rightAfter } from './generated/restated'
import { interpreter } from './generated/score/interpreter'
import type { ReadOutcome } from './generated/score/reader'

/** Logs that are read right as they stand, and hold nothing but one sheet with the job and both directions. */
const CLEAR = [
  'english form, side by side',
  'english form, one below the other',
  'german protocol, below',
  'english own terms, below',
  'danish form, side by side',
  'metric with cfm flows',
]
const clear = generatedLogs.filter(({ name }) => CLEAR.includes(name))

/** The same changes in every run. */
const SEED = 20260917

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ kind: fc.constant('unit' as const), which: fc.nat(60), to: fc.nat(8) }),
  fc.record({ kind: fc.constant('swap columns' as const), one: fc.nat(30), other: fc.nat(30) }),
  fc.record({
    kind: fc.constantFrom(
      'total row' as const,
      'title' as const,
      'blank row' as const,
      'notes' as const,
      'hidden column' as const,
    ),
    at: fc.nat(60),
  }),
  fc.record({
    kind: fc.constantFrom(
      'note row' as const,
      'word for a reading' as const,
      'target row' as const,
      'repeated block' as const,
      'merged heading' as const,
      'units in words' as const,
    ),
    at: fc.nat(60),
  }),
  fc.record({
    kind: fc.constantFrom(
      'turned' as const,
      'decimal commas' as const,
      'brackets' as const,
      'renamed sheet' as const,
    ),
  }),
)

/** The evaluation of each test; undefined where there is no record or it cannot be evaluated, which is said. */
const evaluations = ({ tests }: ReadOutcome): (Evaluation | undefined)[] =>
  tests.map(({ record }) => {
    try {
      return record && evaluate(record)
    } catch {
      return undefined
    }
  })

const n50Of = (outcome: ReadOutcome) => evaluations(outcome).map((one) => one?.results.n50?.value)

/** What is said, without the places, which every change moves. */
const said = (outcome: ReadOutcome) =>
  new Set(
    [
      ...outcome.findings,
      ...outcome.tests.flatMap((test) => test.findings),
      ...evaluations(outcome).flatMap((one) => one?.findings ?? []),
    ].map(({ rule, message }) => `${rule} ${message}`.replace(/\b[A-Z]{1,3}\d+\b|\d+([.,]\d+)?/g, '#')),
  )

function openOrNamed(outcome: ReadOutcome, before: ReadOutcome): boolean {
  if (outcome.questions.length + outcome.problems.length > 0) return true
  if (evaluations(outcome).some((one) => !one)) return true
  const known = said(before)
  return [...said(outcome)].some((text) => !known.has(text))
}

async function outcomeOf(log: GeneratedLog, sheets = log.sheets): Promise<ReadOutcome> {
  return interpreter(await writeSheets(sheets, log.recipe), log.fileName, {})
}

describe('a clear log that somebody changes', () => {
  it('is found under all its names', () => expect(clear.length).toBe(CLEAR.length))

  it('stays right, or a question or finding appears', async () => {
    const before = new Map<string, ReadOutcome>()
    for (const log of clear) {
      const outcome = await outcomeOf(log)
      expect(n50Of(outcome)[0], log.name).toBeCloseTo(log.tests[0]?.n50_1_h ?? Number.NaN, 2)
      before.set(log.name, outcome)
    }
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...clear), change, async (log, one) => {
        const [sheet] = log.sheets
        const made = sheet && changed(sheet, one)
        fc.pre(made !== undefined)
        const outcome = await outcomeOf(log, [made.sheet])
        const right = rightAfter(log, made.restated)
        const n50 = n50Of(outcome)
        const stays =
          n50.length === 1 && right.some((value) => Math.abs((n50[0] ?? Number.NaN) / value - 1) < 0.0005)
        const text = `${log.name}: ${JSON.stringify(one)} gives ${String(n50[0])} for ${right.join(' or ')}`
        expect(stays || openOrNamed(outcome, before.get(log.name) as ReadOutcome), text).toBe(true)
      }),
      { numRuns: 250, seed: SEED },
    )
  }, 120_000)
})
