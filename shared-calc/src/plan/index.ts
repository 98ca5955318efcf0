export { PLAN_FORMAT, PlanRequest, planOfRecord } from './request.js'
export { makePlan, PLAN_RESULT_FORMAT, PlanResult, planResult } from './result.js'
export { type WorkedPlan, workPlan } from './work-plan.js'
