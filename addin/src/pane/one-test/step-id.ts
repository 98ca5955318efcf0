/** The parts of the job, in their order. */
export type StepId = 'before' | 'site' | 'result'
