import type { Evaluation, TestRecord } from '../contract/record/index.js'
import type { VersionParts } from '../versions/version.js'

/** What firms' own workbooks are known to take otherwise. */
const variants: readonly (readonly [says: string, change: (record: TestRecord) => void])[] = [
  [
    'dry air is assumed (density)',
    ({ conditions }) => {
      conditions.indoorRelativeHumidity = 0
      conditions.outdoorRelativeHumidity = 0
    },
  ],
  [
    'the zero-flow pressure is not subtracted',
    ({ runs }) => {
      for (const run of runs)
        for (const key of ['zeroFlowBefore_Pa', 'zeroFlowAfter_Pa'] as const)
          if (run[key]) run[key] = run[key].map(() => 0)
    },
  ],
  [
    'the air indoors and outdoors is assumed to have the same density',
    ({ conditions }) => {
      conditions.outdoorTemperature_C = conditions.indoorTemperature_C
      if (conditions.indoorRelativeHumidity !== undefined)
        conditions.outdoorRelativeHumidity = conditions.indoorRelativeHumidity
    },
  ],
]

/** The same test as a firm's workbook may have calculated it, each with what is otherwise. */
export function otherEvaluations(
  record: TestRecord,
  evaluateWorked: VersionParts['evaluateWorked'],
): readonly (readonly [says: string, evaluation: Evaluation])[] {
  return variants.flatMap(([says, change]) => {
    const other = structuredClone(record)
    change(other)
    try {
      return [[says, evaluateWorked(other).evaluation] as const]
    } catch {
      // Read so, the test gives no figure: it explains nothing.
      return []
    }
  })
}
