import { z } from 'zod'
import { VolumeBasis } from './building.js'
import { Decision, RunFits, UncertaintyEvaluation } from './evaluation-uncertainty.js'
import { Direction } from './runs.js'
import { TargetDirections, TargetQuantity } from './target.js'

export const EVALUATION_FORMAT = 'draughtbook/evaluation@1'

const finite = z.number()
const interval = z.tuple([finite, finite])

/** A figure with its unit and, where the fit gives one, its 95 % interval (fit scatter only). */
export const Figure = z.strictObject({ value: finite, unit: z.string(), ci95: interval.optional() })
export type Figure = z.infer<typeof Figure>

export const Severity = z.enum(['invalidates', 'caution', 'note'])
export type Severity = z.infer<typeof Severity>

/** Something a rule objects to, an assumption made, or a conversion: never silent, always with its place. */
export const Finding = z.strictObject({
  rule: z.string(),
  severity: Severity,
  message: z.string(),
  clause: z.string().optional(),
  /** How we know the clause or limit: read, from memory, common practice. */
  provenance: z.string().optional(),
  value: finite.optional(),
  limit: finite.optional(),
  where: z.array(z.string()),
  cells: z.array(z.string()).optional(),
  remedy: z.string().optional(),
})
export type Finding = z.infer<typeof Finding>

export const EvaluatedReading = z.strictObject({
  pressureDifference_Pa: finite,
  envelopeFlow_m3_h: finite,
  fittedFlow_m3_h: finite,
  /** Externally studentised residual; absent where the fit leaves no freedom to judge it. */
  studentisedResidual: finite.optional(),
})

const quantities = {
  q50: Figure,
  q10: Figure,
  q4: Figure,
  ela4: Figure,
  ela10: Figure,
  n50: Figure.optional(),
  qE50: Figure.optional(),
  qF50: Figure.optional(),
}

export type EvaluatedReading = z.infer<typeof EvaluatedReading>

export const EvaluatedRun = z.strictObject({
  direction: Direction,
  zeroFlowPressure_Pa: finite,
  airFlowCoefficient: Figure,
  airLeakageCoefficient: Figure,
  airFlowExponent: Figure,
  /** Absent where the method fits no line. */
  rSquared: finite.optional(),
  ...quantities,
  readings: z.array(EvaluatedReading),
})
export type EvaluatedRun = z.infer<typeof EvaluatedRun>

export const Results = z.strictObject(quantities)
export type Results = z.infer<typeof Results>

export const Outcome = z.enum(['meets', 'misses', 'not valid', 'no target'])
export type Outcome = z.infer<typeof Outcome>

/** One limit as judged: most targets have one, some have a further one for large buildings. */
export const Criterion = z.strictObject({
  quantity: TargetQuantity,
  referencePressure_Pa: finite,
  limit: finite,
  unit: z.string(),
  value: finite,
  /** Where the value is the mean, or the worse of the directions judged one by one. */
  judged: z.enum(['mean', 'one direction', 'worse direction']),
  margin: finite,
  within: z.boolean(),
})
export type Criterion = z.infer<typeof Criterion>

export const Ageing = z.strictObject({
  label: z.string(),
  growth: finite,
  value: finite,
  margin: finite,
  within: z.boolean(),
  source: z.string(),
})

export const JudgedTarget = z.strictObject({
  preset: z.string().optional(),
  label: z.string(),
  quantity: TargetQuantity,
  limit: finite,
  unit: z.string(),
  referencePressure_Pa: finite,
  directions: TargetDirections,
  volumeBasis: VolumeBasis.optional(),
  decimalPlaces: z.number().optional(),
  source: z.string(),
})
export type JudgedTarget = z.infer<typeof JudgedTarget>

export const Verdict = z.strictObject({
  target: JudgedTarget.optional(),
  value: finite.optional(),
  outcome: Outcome,
  margin: finite.optional(),
  leakageToSeal_cm2: finite.optional(),
  criteria: z.array(Criterion),
  ageing: z.array(Ageing),
})
export type Verdict = z.infer<typeof Verdict>

export const TraceStep = z.strictObject({
  block: z.string(),
  symbol: z.string(),
  name: z.string(),
  unit: z.string(),
  expression: z.string(),
  substituted: z.string(),
  mathml: z.string(),
  value: z.union([finite, z.array(finite)]),
  source: z.string(),
})
export type TraceStep = z.infer<typeof TraceStep>

/** A figure of the method itself, in the unit of the evaluation and in that of the method's users. */
export const OfficialResult = z.strictObject({
  term: z.string(),
  /** Only where each run has its own. */
  direction: Direction.optional(),
  value: finite,
  unit: z.string(),
  customary: z.strictObject({ value: finite, unit: z.string() }).optional(),
  source: z.string(),
})
export type OfficialResult = z.infer<typeof OfficialResult>

/** What comes back for a record. Full double precision: rounding is the reader's business. */
export const Evaluation = z.strictObject({
  format: z.literal(EVALUATION_FORMAT),
  calculationVersion: z.string(),
  method: z.string(),
  recordDigest: z.string(),
  air: z.strictObject({
    indoorDensity_kg_m3: finite,
    outdoorDensity_kg_m3: finite,
    referenceDensity_kg_m3: finite,
  }),
  runs: z.array(EvaluatedRun),
  results: Results,
  verdict: Verdict,
  findings: z.array(Finding),
  /** What the method itself reports, where that is more than the quantities above. */
  official: z.array(OfficialResult).optional(),
  /** Only where asked for, or where the record has an uncertainty part. */
  uncertainty: UncertaintyEvaluation.optional(),
  fits: z.array(RunFits).optional(),
  decision: z.array(Decision).optional(),
  trace: z.array(TraceStep).optional(),
})
export type Evaluation = z.infer<typeof Evaluation>
