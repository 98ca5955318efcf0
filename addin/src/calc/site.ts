import {
  type AssessedTest,
  allCautions,
  askedOf,
  cautionName,
  cautionTexts,
  checkPreparation,
  InputError,
  type LeakReport,
  leakReport,
  makePlan,
  measureTakeOff,
  methods,
  PLAN_FORMAT,
  type PlanRequest,
  type PlanResult,
  type Problem,
  parsePlan,
  preparationList,
  type Run,
  type TakeOffResult,
  type TestRecord,
  type WhileReading,
  whileReading,
  workLeaks,
} from '@draughtbook/shared-calc'

/** One opening of the preparation list: what the method asks, and whether what was logged agrees. */
export interface ListedOpening {
  readonly kind: string
  readonly asked: string
  readonly states: readonly string[]
  readonly agrees?: boolean
}

/** What the sections before and on site show. */
export interface LiveSite {
  readonly takeOff?: TakeOffResult
  readonly plan?: { readonly request: PlanRequest; readonly result: PlanResult }
  /** What stops the plan. */
  readonly planProblems: readonly Problem[]
  readonly openings: readonly ListedOpening[]
  readonly cautions: readonly { readonly caution: string; readonly name: string; readonly text: string }[]
  readonly leaks?: LeakReport
  readonly readings: readonly { readonly direction: string; readonly state: WhileReading }[]
  /** What unfinished parts lack, by path. */
  readonly faults: readonly Problem[]
}

/** Works out what is shown before and on site, from the draft and from the record where there is one. */
export function liveSite(
  draft: Record<string, unknown>,
  whole: { record: TestRecord; test: AssessedTest } | undefined,
  runs: readonly Run[],
  faults: readonly Problem[],
): LiveSite {
  const known = draft as Partial<TestRecord>
  const planned = planOf(known)
  return {
    ...(known.takeOff && { takeOff: measureTakeOff(known.takeOff) }),
    ...('request' in planned && { plan: planned }),
    planProblems: 'problems' in planned ? planned.problems : [],
    openings: openingsOf(known),
    cautions: allCautions.map((caution) => ({
      caution,
      name: cautionName(caution),
      text: cautionTexts[caution],
    })),
    ...(whole && { leaks: leaksOf(whole) }),
    readings: readingsOf(known, runs),
    faults,
  }
}

/** The leak report of a test that is worked out already. */
function leaksOf({ record, test }: { record: TestRecord; test: AssessedTest }): LeakReport {
  const log = record.leaks ?? { list: [] }
  return leakReport(record, log, test.leaks ?? workLeaks(test, log))
}

function planOf({
  building,
  test,
  target,
  takeOff,
  plan,
}: Partial<TestRecord>): { request: PlanRequest; result: PlanResult } | { problems: readonly Problem[] } {
  try {
    const request = parsePlan({
      format: PLAN_FORMAT,
      building,
      method: test?.method,
      ...(test?.preparation && { preparation: test.preparation }),
      ...(target && { target }),
      ...(takeOff && { takeOff }),
      plan: plan ?? (test?.date === undefined ? {} : { day: test.date }),
    })
    return { request, result: makePlan(request) }
  } catch (error) {
    if (error instanceof InputError) return { problems: error.problems }
    throw error
  }
}

function openingsOf({ test }: Partial<TestRecord>): ListedOpening[] {
  const openings = (test?.openings ?? []).filter(({ state }) => state !== undefined)
  const checked = checkPreparation({ test: { date: '', method: '', ...test, openings } })
  return preparationList.map((listed, i) => {
    const found = checked[i]?.found ?? []
    return {
      kind: listed.kind,
      asked: checked[i]?.asked ?? '',
      states: askedOf(listed, test?.preparation)?.states ?? [],
      ...(found.length > 0 && { agrees: found.every(({ agrees }) => agrees) }),
    }
  })
}

function readingsOf(
  {
    building = {} as TestRecord['building'],
    conditions = {} as TestRecord['conditions'],
    flowDevice,
    pressureGauge,
    uncertainty,
    test,
  }: Partial<TestRecord>,
  runs: readonly Run[],
): LiveSite['readings'] {
  const method = methods.find(({ id }) => id === test?.method)
  if (!method) return []
  return runs.flatMap((run) => {
    try {
      const state = whileReading(
        {
          building,
          conditions,
          run,
          ...(flowDevice && { flowDevice }),
          ...(pressureGauge && { pressureGauge }),
          ...(uncertainty && { uncertainty }),
        },
        method,
      )
      return state ? [{ direction: run.direction, state }] : []
    } catch (error) {
      // What is wrong with a reading is said where the record is read.
      if (error instanceof InputError) return []
      throw error
    }
  })
}
