import { constantValue } from '../../catalogue/constants.js'
import type { DeviceRange, Direction, PlannedDevice } from '../../contract/record/index.js'
import {
  assumed,
  type BlockOf,
  byRule,
  type Calculation,
  columnOf,
  fromRecord,
  type Given,
} from '../../engine/index.js'
import { flowDevice } from '../../formulas/flow-device.js'
import { provableLeakage } from '../../formulas/plan-flows.js'
import { EXPECTED_EXPONENTS, type PlannedPressures } from './pressures.js'

/** A range whose flow limits are known, with its place in the plan. */
export interface LimitedRange {
  readonly range: DeviceRange
  readonly path: string
  readonly lowest: Given
  readonly highest: Given
}

/** A device in one direction: the flow limits of its ranges, and what each can prove where the volume is known. */
export interface DeviceInDirection {
  readonly direction: Direction
  readonly ranges: readonly LimitedRange[]
  /** Rows are the ranges. */
  readonly provable?: BlockOf<typeof provableLeakage>
}

/** Densities of one direction: in the device, and in the leaks. */
export interface DirectionAir {
  readonly inDevice: Given
  readonly inLeaks: Given
}

/** Works out the ranges of one device in one direction. Ranges whose limits are not stated are left out, and a finding names them. */
export function workDevice(
  calculation: Calculation,
  device: PlannedDevice,
  index: number,
  direction: Direction,
  air: DirectionAir,
  pressures: PlannedPressures,
  volume: Given | undefined,
): DeviceInDirection {
  const id = `plan.device${index + 1}.${direction}`
  const at = `plan.devices[${index}]`
  const stated = (device.ranges ?? []).map((range, i) => ({ range, path: `${at}.ranges[${i}]` }))
  const flows = flowsAtPressureLimits(calculation, id, device, at, air, stated)
  const ranges = stated.flatMap(({ range, path }): LimitedRange[] => {
    const fromPressure = flows.get(range)
    const lowest = strictest(Math.max, [limit(range, path, 'minimumFlow_m3_h'), fromPressure?.lowest])
    const highest = strictest(Math.min, [limit(range, path, 'maximumFlow_m3_h'), fromPressure?.highest])
    return lowest && highest ? [{ range, path, lowest, highest }] : []
  })
  if (!volume || ranges.length === 0) return { direction, ranges }
  const provable = calculation.add(
    `${id}.provable`,
    `${device.name}, ${direction}: leakage each range can measure`,
    provableLeakage,
    {
      q_low: columnOf(ranges.map(({ lowest }) => lowest)),
      q_top: columnOf(ranges.map(({ highest }) => highest)),
      dp_low: pressures.lowestToSet,
      dp_top: pressures.highestToSet,
      dp_r: byRule(50, 'reference pressure'),
      n_hi: byRule(EXPECTED_EXPONENTS[2], 'highest expected exponent'),
      rho_d: air.inDevice,
      rho_x: air.inLeaks,
      V: volume,
    },
  )
  return { direction, ranges, provable }
}

const limit = (
  range: DeviceRange,
  path: string,
  field: 'minimumFlow_m3_h' | 'maximumFlow_m3_h',
): Given | undefined => {
  const value = range[field]
  return value === undefined ? undefined : fromRecord(`${path}.${field}`, value)
}

/** Where a range is limited by flow and by pressure, the narrower limit counts. */
function strictest(
  pick: (...values: number[]) => number,
  limits: readonly (Given | undefined)[],
): Given | undefined {
  const known = limits.filter((given) => given !== undefined)
  const value = pick(...known.map((given) => given.value))
  return known.find((given) => given.value === value)
}

type Limits = { readonly lowest: Given; readonly highest: Given }

/** Flows at the pressure limits of the ranges that have coefficient, exponent and both pressures. */
function flowsAtPressureLimits(
  calculation: Calculation,
  id: string,
  device: PlannedDevice,
  at: string,
  air: DirectionAir,
  stated: readonly { readonly range: DeviceRange; readonly path: string }[],
): Map<DeviceRange, Limits> {
  const rows = stated.flatMap(({ range, path }) => {
    const { coefficient, exponent, minimumPressure_Pa: low, maximumPressure_Pa: high } = range
    if (coefficient === undefined || exponent === undefined || low === undefined || high === undefined)
      return []
    return [
      {
        range,
        c_d: fromRecord(`${path}.coefficient`, coefficient),
        m_d: fromRecord(`${path}.exponent`, exponent),
        pressures: [
          fromRecord(`${path}.minimumPressure_Pa`, low),
          fromRecord(`${path}.maximumPressure_Pa`, high),
        ],
      },
    ]
  })
  if (rows.length === 0) return new Map()
  const twice = (given: (row: (typeof rows)[number]) => Given) =>
    columnOf(rows.flatMap((row) => [given(row), given(row)]))
  const reference = device.referenceDensity_kg_m3
  const block = calculation.add(id, `${device.name}: flows at the limits of its ranges`, flowDevice, {
    dp_d: columnOf(rows.flatMap(({ pressures }) => pressures)),
    c_d: twice(({ c_d }) => c_d),
    m_d: twice(({ m_d }) => m_d),
    rho_cal:
      reference === undefined
        ? assumed(constantValue('rho_0'), 'assumed-reference-density')
        : fromRecord(`${at}.referenceDensity_kg_m3`, reference),
    rho_d: air.inDevice,
  })
  return new Map(
    rows.map(({ range }, i) => [
      range,
      { lowest: block.refRow('q_d', 2 * i), highest: block.refRow('q_d', 2 * i + 1) },
    ]),
  )
}
