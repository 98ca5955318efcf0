interface PlanDraft {
  day?: unknown
  forecast?: { windSpeed_m_s?: unknown; windAt?: unknown }
}

/** What the plan takes from what is asked elsewhere: its day is the test's, and wind is forecast for weather stations. */
export function completePlan(plan: PlanDraft, testDate: unknown): void {
  if (plan.day === undefined && testDate !== undefined) plan.day = testDate
  if (plan.forecast?.windSpeed_m_s !== undefined) plan.forecast.windAt ??= 'meteorological'
}
