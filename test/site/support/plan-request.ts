import { readFileSync } from 'node:fs'
import { type PlanRequest, parsePlan } from '@draughtbook/shared-calc'

/** An invented house of 320 m³ to be tested to 0.6 1/h, and two invented devices. Demo data. */
export const planRequest: PlanRequest = parsePlan(
  JSON.parse(readFileSync(new URL('../../demo/demo-plan.json', import.meta.url), 'utf8')),
)
