import type { WorkedStage, WorkedStages } from './work-stages.js'

export const STAGES_FORMAT = 'draughtbook/stages@1'

/** One test against its allowance; flows at the reference pressure of the target. */
export interface StageResult {
  readonly plot: string
  readonly stage: WorkedStage['stage']
  readonly file: string
  readonly date: string
  readonly target_m3_h: number
  readonly allowed_m3_h: number
  readonly measured_m3_h: number
  /** Since the stage before; absent for the first. */
  readonly used_m3_h?: number
  readonly left_m3_h: number
  readonly left_cm2: number
  readonly shareUsed: number
  /** That the true leakage is within what is allowed up to the stage. */
  readonly probability: number
  readonly decision: WorkedStage['decision']
  readonly why?: string
}

export interface StagesResult {
  readonly format: typeof STAGES_FORMAT
  readonly shares: WorkedStages['shares']
  readonly confidence: number
  readonly stages: readonly StageResult[]
  readonly leftOut: WorkedStages['leftOut']
}

export const stagesResult = ({ shares, confidence, stages, leftOut }: WorkedStages): StagesResult => ({
  format: STAGES_FORMAT,
  shares,
  confidence,
  stages: stages.map(resultOf),
  leftOut,
})

function resultOf({
  plot,
  stage,
  test,
  target,
  allowance,
  use,
  probability,
  decision,
  why,
}: WorkedStage): StageResult {
  const measured = allowance.input('q_s')
  return {
    plot,
    stage,
    file: test.file,
    date: test.record.test.date,
    target_m3_h: target.value('q_t'),
    allowed_m3_h: allowance.value('q_a'),
    measured_m3_h: measured && 'value' in measured ? measured.value : Number.NaN,
    ...(use && { used_m3_h: use.value('q_u') }),
    left_m3_h: allowance.value('q_l'),
    left_cm2: allowance.value('A_l'),
    shareUsed: allowance.value('s_u'),
    probability: probability.value('P_s'),
    decision,
    ...(why !== undefined && { why }),
  }
}
