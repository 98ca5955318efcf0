import {
  digestOf,
  type Evaluation,
  type Finding,
  type Outcome,
  type TestRecord,
} from '../../contract/record/index.js'

/** What a register needs of one test: plain data, small enough to keep for a whole country's tests. */
export interface TestLine {
  /** Path of the file as given. */
  readonly file: string
  /** What tells several tests of one file apart; absent where there is one. */
  readonly part?: string
  readonly source: 'summary workbook' | 'own layout'
  readonly building: string
  readonly site?: string
  readonly client?: string
  readonly tester?: string
  readonly stage?: string
  readonly date: string
  readonly testNumber?: string
  /** From the office's list of orders. */
  readonly orderNumber?: string
  /** From the office's list of orders, in its own currency. */
  readonly fee?: number
  readonly recordDigest: string
  /** SHA-256 of the readings of all runs: the same for every issue of a test. */
  readonly readingsDigest: string
  readonly calculationVersion: string
  readonly results: { readonly [quantity in LineQuantity]?: number }
  readonly judged?: Judged
  readonly outcome: Outcome
  readonly findings: readonly LineFinding[]
  readonly gauge: LineInstrument
  readonly device: LineInstrument
  readonly curves: readonly LineCurve[]
  /** Why the figures of this file cannot be taken as issued; absent where its digests fit. */
  readonly altered?: string
}

export const lineQuantities = ['n50', 'qE50', 'qF50', 'q50', 'q4', 'ela4'] as const
export type LineQuantity = (typeof lineQuantities)[number]

/** The limit a test came closest to, or missed by most. */
export interface Judged {
  readonly quantity: string
  readonly label: string
  readonly value: number
  readonly limit: number
  readonly unit: string
  readonly margin: number
}

export type LineFinding = Pick<Finding, 'rule' | 'severity' | 'message'>

export interface LineInstrument {
  readonly serial?: string
  readonly calibrationDue?: string
}

/** Curve of one direction, with the ends of its 95 % intervals at 50 and 4 Pa (fit scatter only). */
export interface LineCurve {
  readonly direction: string
  readonly coefficient: number
  readonly exponent: number
  readonly q50: readonly [number, number] | undefined
  readonly q4: readonly [number, number] | undefined
}

/** The line of a test. @param about - where it was found, and what is wrong with its digests */
export function lineOf(
  about: Pick<TestLine, 'file' | 'part' | 'source' | 'altered'>,
  { building, test, pressureGauge, flowDevice, runs }: TestRecord,
  evaluation: Evaluation,
): TestLine {
  const { results, verdict } = evaluation
  const judged = judgedOf(evaluation)
  return {
    ...about,
    building: tidy(building.name),
    ...optional('site', building.site),
    ...optional('client', test.client),
    ...optional('tester', test.tester),
    ...(test.stage !== undefined && { stage: test.stage }),
    date: test.date,
    ...optional('testNumber', test.id),
    recordDigest: evaluation.recordDigest,
    readingsDigest: digestOf(runs.map(({ direction, readings }) => ({ direction, readings }))),
    calculationVersion: evaluation.calculationVersion,
    results: Object.fromEntries(
      lineQuantities.flatMap((name) => (results[name] ? [[name, results[name].value]] : [])),
    ),
    ...(judged && { judged }),
    outcome: verdict.outcome,
    findings: evaluation.findings.map(({ rule, severity, message }) => ({
      rule,
      severity,
      message,
    })),
    gauge: instrument(pressureGauge),
    device: instrument(flowDevice),
    curves: evaluation.runs.map((run) => ({
      direction: run.direction,
      coefficient: run.airLeakageCoefficient.value,
      exponent: run.airFlowExponent.value,
      q50: run.q50.ci95,
      q4: run.q4.ci95,
    })),
  }
}

function judgedOf({ verdict }: Evaluation): Judged | undefined {
  const share = (criterion: { margin: number; limit: number }) => criterion.margin / criterion.limit
  const [closest] = [...verdict.criteria].sort((a, b) => share(a) - share(b))
  if (!closest) return undefined
  const { quantity, value, limit, unit, margin } = closest
  return { quantity, label: verdict.target?.label ?? quantity, value, limit, unit, margin }
}

const instrument = (
  given: { readonly [key in keyof LineInstrument]?: LineInstrument[key] | undefined } | undefined,
): LineInstrument => ({
  ...(given?.serial !== undefined && { serial: given.serial }),
  ...(given?.calibrationDue !== undefined && { calibrationDue: given.calibrationDue }),
})

/** Names differ by a stray space from one workbook to the next. */
export const tidy = (text: string): string => text.trim().replace(/\s+/g, ' ')

function optional<Key extends string>(key: Key, text: string | undefined): { [key in Key]?: string } {
  const kept = text === undefined ? '' : tidy(text)
  return kept === '' ? {} : ({ [key]: kept } as { [key in Key]: string })
}
