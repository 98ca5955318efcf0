import { finding } from '../../catalogue/findings/finding.js'
import type { Run } from '../../contract/record/index.js'
import { inEach, type Rule } from './rule.js'

/** The leakage changed from one reading to the next. A list sorted by pressure does not say in which order it was read. */
export const leakageChange: Rule = ({ record, test }) =>
  inEach(test.steps, ({ run: { curve, direction, index }, from, step }) => {
    const [share, limit] = [step.value('f_z'), step.value('f_l')]
    const what = { where: [`runs[${index}].readings[${from}]`], value: share, limit }
    const params = { direction, reading: from, share, limit }
    if (changesRange(record.runs[index]?.readings ?? [], from))
      return [finding('leakage-step/range', what, params)]
    const order = orderOf(curve.column('dp'))
    return order === 'mixed'
      ? [finding('leakage-step/listed', what, params)]
      : [finding('leakage-step/by-pressure', what, { ...params, falling: order === 'falling' })]
  })

function orderOf(pressures: readonly number[]): 'falling' | 'rising' | 'mixed' {
  const steps = pressures.slice(1).map((pressure, i) => pressure - (pressures[i] as number))
  if (steps.every((step) => step <= 0)) return 'falling'
  return steps.every((step) => step >= 0) ? 'rising' : 'mixed'
}

/** Whether no range that was read with before a reading was read with from it on. */
function changesRange(readings: Run['readings'], from: number): boolean {
  const ranges = readings.map(({ range, devices = [] }) => [range, ...devices.map((one) => one.range)])
  const before = new Set(ranges.slice(0, from).flat())
  const after = ranges.slice(from).flat()
  const isNamed = (range: string | undefined) => range !== undefined
  return (
    [...before].some(isNamed) && after.some(isNamed) && !after.some((one) => isNamed(one) && before.has(one))
  )
}
