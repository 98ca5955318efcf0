import { stageReasons } from '../../catalogue/findings/several-homes.js'
import { InputError } from '../../contract/problem.js'
import { problemsInWords } from '../../contract/record/index.js'
import { type BlockOf, byRule, Calculation, type Given } from '../../engine/index.js'
import { allowedLeakage } from '../../formulas/plan-flows.js'
import { stageAllowance, stageProbability, stageUse } from '../../formulas/stage-allowance.js'
import { type GivenHome, type TestedHome, workHome } from '../building/home.js'

/** Stages in the order of the work. */
export const siteStages = ['fabric', 'after services', 'acceptance'] as const
export type SiteStage = (typeof siteStages)[number]

/** Shares of the target that may be used up to each stage: common practice, no source. */
export const usualShares: Readonly<Record<SiteStage, number>> = {
  fabric: 0.7,
  'after services': 0.9,
  acceptance: 1,
}
/** Probability of being within the allowance that the next trade needs to start: common practice, no source. */
export const USUAL_CONFIDENCE = 0.8

export interface StagesRequest {
  readonly tests: readonly GivenHome[]
  /** Shares of the target, above 0 and at most 1, not falling from stage to stage. */
  readonly shares?: Readonly<Record<SiteStage, number>>
  readonly confidence?: number
}

export type StageDecision = 'go' | 'stop' | 'meets' | 'fails'

/** One test of a plot against its allowance. */
export interface WorkedStage {
  readonly plot: string
  readonly stage: SiteStage
  readonly test: TestedHome
  /** Index in the list: its fields are under `tests[index]` on sheet Allowance. */
  readonly index: number
  readonly target: BlockOf<typeof allowedLeakage>
  readonly allowance: BlockOf<typeof stageAllowance>
  readonly use?: BlockOf<typeof stageUse>
  readonly probability: BlockOf<typeof stageProbability>
  readonly decision: StageDecision
  /** Why it is a stop though the figures would let the next trade start. */
  readonly why?: string
}

export interface WorkedStages {
  readonly calculation: Calculation
  /** In alphabetical order. */
  readonly plots: readonly string[]
  /** The last test of each stage, plot by plot. */
  readonly stages: readonly WorkedStage[]
  readonly shares: Readonly<Record<SiteStage, number>>
  readonly confidence: number
  readonly leftOut: readonly { readonly file: string; readonly why: string }[]
}

/**
 * Each plot's leakage over the stages of the work against what its target allows. Tests without a target or a stage are left
 * out, with the reason; so are tests of a stage that was tested again later.
 * @throws InputError where shares or confidence are not usable
 */
export function workStages({
  tests,
  shares = usualShares,
  confidence = USUAL_CONFIDENCE,
}: StagesRequest): WorkedStages {
  refuseShares(shares, confidence)
  const calculation = new Calculation()
  const leftOut: { file: string; why: string }[] = []
  const placed = tests.flatMap((given) => placedTest(given, leftOut))
  const latest = lastOfStage(placed, leftOut)
  const stages: WorkedStage[] = []
  latest.forEach(({ plot, stage, test }, index) => {
    const before = stages.findLast((one) => one.plot === plot)
    stages.push(workStage(calculation, { plot, stage, test, index }, { before, shares, confidence }))
  })
  return {
    calculation,
    plots: [...new Set(latest.map(({ plot }) => plot))],
    stages,
    shares,
    confidence,
    leftOut,
  }
}

interface Placed {
  readonly plot: string
  readonly stage: SiteStage
  readonly test: TestedHome
}

function placedTest(given: GivenHome, leftOut: { file: string; why: string }[]): Placed[] {
  const { building, test } = given.record
  const leave = (why: string): Placed[] => {
    leftOut.push({ file: given.file, why })
    return []
  }
  // A retest repeats the acceptance test.
  const stage = test.stage === 'retest' ? 'acceptance' : test.stage
  if (stage === undefined) return leave(stageReasons.noStage)
  try {
    const plot = [building.site, building.name].filter(Boolean).join(', ')
    return [{ plot, stage, test: workHome(given) }]
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    // The file is named beside the reason.
    const problems = error.problems.map((one) => (one.path === given.file ? { ...one, path: '' } : one))
    return leave(problemsInWords(problems, given.record))
  }
}

function lastOfStage(placed: readonly Placed[], leftOut: { file: string; why: string }[]): Placed[] {
  const sorted = [...placed].sort(
    (a, b) =>
      a.plot.localeCompare(b.plot, 'en', { numeric: true }) ||
      siteStages.indexOf(a.stage) - siteStages.indexOf(b.stage) ||
      a.test.record.test.date.localeCompare(b.test.record.test.date),
  )
  return sorted.filter((one, i) => {
    const next = sorted[i + 1]
    const repeated = next?.plot === one.plot && next.stage === one.stage
    if (repeated) leftOut.push({ file: one.test.file, why: stageReasons.repeated(next.test.file) })
    return !repeated
  })
}

/** A number on sheet Allowance. */
const cell = (value: number, path: string): Given => ({ value, origin: { kind: 'record', path } })

function workStage(
  calculation: Calculation,
  { plot, stage, test, index }: Placed & { readonly index: number },
  {
    before,
    shares,
    confidence,
  }: {
    readonly before: WorkedStage | undefined
    readonly shares: Readonly<Record<SiteStage, number>>
    readonly confidence: number
  },
): WorkedStage {
  const id = `test${index + 1}`
  const title = `${plot}, ${stage}`
  const { block } = test.decision.budget
  const target = calculation.add(`${id}.target`, `${title}: target`, allowedLeakage, {
    L: cell(test.largestFigure, `tests[${index}].limit`),
    B: cell(test.basis, `tests[${index}].basis`),
  })
  const measured = calculation.add(`${id}.measured`, `${title}: measured`, allowedLeakage, {
    L: cell(block.value('v'), `tests[${index}].figure`),
    B: cell(test.basis, `tests[${index}].basis`),
  })
  const allowance = calculation.add(`${id}.allowance`, `${title}: allowance`, stageAllowance, {
    q_t: target.ref('q_t'),
    f_s: cell(shares[stage], `shares.${stage}`),
    q_s: measured.ref('q_t'),
    dp_r: byRule(test.target.referencePressure_Pa, 'reference pressure of the target'),
  })
  const reason = 'from the budget of the test'
  const probability = calculation.add(`${id}.probability`, `${title}: probability`, stageProbability, {
    q_a: allowance.ref('q_a'),
    q_s: measured.ref('q_t'),
    u_c: byRule(block.value('u_c'), reason),
    b: byRule(block.value('b'), reason),
    nu_e: byRule(block.value('nu_e'), reason),
  })
  const use = before && {
    use: calculation.add(`${id}.use`, `${title}: used since ${before.stage}`, stageUse, {
      q_e: calculation.get(`test${before.index + 1}.measured`).ref('q_t'),
      q_s: measured.ref('q_t'),
    }),
  }
  return {
    plot,
    stage,
    test,
    index,
    target,
    allowance,
    ...use,
    probability,
    ...decide(stage, test, probability.value('P_s'), confidence),
  }
}

function decide(
  stage: SiteStage,
  { outcome, altered }: TestedHome,
  probability: number,
  confidence: number,
): Pick<WorkedStage, 'decision' | 'why'> {
  const stop = stage === 'acceptance' ? 'fails' : 'stop'
  if (altered !== undefined) return { decision: stop, why: altered }
  if (outcome === 'not valid') return { decision: stop, why: stageReasons.notValid }
  if (stage === 'acceptance') return { decision: outcome === 'meets' ? 'meets' : 'fails' }
  return { decision: probability >= confidence ? 'go' : 'stop' }
}

function refuseShares(shares: Readonly<Record<SiteStage, number>>, confidence: number): void {
  const given = siteStages.map((stage) => shares[stage])
  const rising = given.every((share, i) => share > 0 && share <= 1 && share >= (given[i - 1] ?? 0))
  if (!rising)
    throw new InputError([
      { path: 'shares', message: 'must be above 0 and at most 1, and must not decrease from stage to stage' },
    ])
  if (!(confidence > 0 && confidence < 1))
    throw new InputError([{ path: 'confidence', message: 'must be above 0 and below 1' }])
}
