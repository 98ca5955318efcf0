import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { traceOf } from '../../shared-calc/src/engine/index.js'
import {
  type AssessedTest,
  type EvaluateOptions,
  Evaluation,
  evaluateWorked,
  InputError,
  parseRecord,
} from '../../shared-calc/src/index.js'
import { anyRecord } from './support/any-records'
import { numbersIn } from './support/figures'
import { ordinaryRecord } from './support/ordinary-records'

/** The rules that must speak for what a calculation assumed. */
function assumptionsOf({ calculation }: AssessedTest): Set<string> {
  const reasons = new Set<string>()
  for (const block of calculation.blocks)
    for (const given of block.inputs) {
      if (given === undefined) continue
      const origins = 'value' in given ? [given.origin] : [...given.values].map((_, row) => given.origin(row))
      for (const origin of origins) if (origin.kind === 'assumed') reasons.add(origin.reason)
    }
  return reasons
}

/** Evaluates; undefined where the input is refused, as it may be, with a message for every field it names. */
function evaluatedOrRefused(input: unknown, options: EvaluateOptions) {
  try {
    return evaluateWorked(parseRecord(input), options)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    expect(error.problems).not.toEqual([])
    for (const { path, message } of error.problems) {
      expect(path).toMatch(/^(building|test|conditions|flowDevice|runs|target)/)
      expect(message).toMatch(/\w/)
      expect(message).not.toMatch(/NaN|undefined|Infinity/)
    }
    return undefined
  }
}

let worked = 0
function expectSound(input: unknown, options: EvaluateOptions = {}): void {
  const result = evaluatedOrRefused(input, options)
  if (!result) return
  worked += 1
  const { evaluation, test } = result
  const broken = numbersIn(evaluation).filter(([, value]) => !Number.isFinite(value))
  expect(broken, 'figures that are no numbers').toEqual([])
  const traced = numbersIn(traceOf(test.calculation)).filter(([, value]) => !Number.isFinite(value))
  expect(traced, 'steps that are no numbers').toEqual([])
  expect(Evaluation.safeParse(evaluation).error?.issues).toBeUndefined()
  const rules = new Set(evaluation.findings.map(({ rule }) => rule))
  for (const reason of assumptionsOf(test)) expect([...rules]).toContain(reason)
}

describe('whatever the schema lets pass', () => {
  it('is refused by name or gives finite figures, in the evaluation’s schema, with a finding for every assumption', () => {
    worked = 0
    fc.assert(
      fc.property(anyRecord, (record) => expectSound(record)),
      { numRuns: 3000, interruptAfterTimeLimit: 40_000 },
    )
    // The check would be empty if nearly everything were refused.
    expect(worked).toBeGreaterThan(500)
  })

  it('holds with uncertainty budget, further fits and decision too', () => {
    worked = 0
    fc.assert(
      fc.property(fc.oneof(anyRecord, ordinaryRecord), (record) =>
        expectSound(record, { uncertainty: true }),
      ),
      { numRuns: 500, interruptAfterTimeLimit: 40_000 },
    )
    expect(worked).toBeGreaterThan(200)
  })

  it('holds for ordinary tests, none of which is refused', () => {
    worked = 0
    fc.assert(
      fc.property(ordinaryRecord, (record) => expectSound(record)),
      { numRuns: 300 },
    )
    expect(worked).toBeGreaterThanOrEqual(300)
  })
})
