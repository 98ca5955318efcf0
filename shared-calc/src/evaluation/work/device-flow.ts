import { constantValue } from '../../catalogue/constants.js'
import { InputError } from '../../contract/problem.js'
import type { DeviceRange, DeviceReading, FlowDevice, Reading, Run } from '../../contract/record/index.js'
import {
  assumed,
  type BlockOf,
  byRule,
  type Calculation,
  type Column,
  columnFromRecord,
  columnOf,
  fromRecord,
  type Given,
} from '../../engine/index.js'
import {
  flowDevice,
  flowDeviceStandard,
  fromReferenceAir,
  severalDevices,
  standardFromDeviceAir,
  standardFromReferenceAir,
  statedAir,
} from '../../formulas/flow-device.js'

/** A calibrated range that a reading names, with its place in the record. */
export interface NamedRange {
  readonly range: DeviceRange
  readonly path: string
}

/** Ranges of a device by label. */
export function rangesOf(device: FlowDevice | undefined): ReadonlyMap<string, NamedRange> {
  return new Map(
    (device?.ranges ?? []).map((range, i) => [range.label, { range, path: `flowDevice.ranges[${i}]` }]),
  )
}

/** From what was typed to what the method takes; nothing where it is that already. */
const conversions = {
  'device air': { 'device air': undefined, 'reference air': fromReferenceAir },
  'standard air': { 'device air': standardFromDeviceAir, 'reference air': standardFromReferenceAir },
} as const
type Conversion = typeof standardFromReferenceAir

/** What a run needs for the flows of its readings. */
export interface FlowSurroundings {
  readonly run: Run
  readonly path: string
  readonly device: FlowDevice | undefined
  /** Density of the air that passes the device. */
  readonly density: Given
  /** Whether the method takes the flow that a device shows for standard air, because its own factors do the rest. */
  readonly nominal: boolean
}

/** The flows of a run's readings, and how each goes with the density of the air in the device. */
export interface WorkedFlows {
  readonly flows: Column
  readonly device: BlockOf<typeof flowDevice | typeof flowDeviceStandard> | undefined
  /** What another answer to "flows of which air?" changes; only where nobody said and it changes a printed figure. */
  readonly otherMeaning: Given | undefined
  /** Whether the reference density of the device entered a flow. */
  readonly usesReferenceDensity: boolean
  /** Exponent with which each mass flow goes with that density: 1 for a flow of the air in the device, else 1/2. */
  readonly densityPowers: readonly number[]
}

/** Below this, as a share, what the flows are flows of changes no printed figure. */
const NEGLIGIBLE = 0.0005

/** One device of one reading: which, in the run. */
interface Single {
  readonly reading: DeviceReading
  readonly row: number
  /** Only where several devices ran for the reading. */
  readonly device?: number
}

const pathOf = (run: string, { row, device }: Single): string =>
  `${run}.readings[${row}]${device === undefined ? '' : `.devices[${device}]`}`

/**
 * Flow of each reading as the method takes it: typed, or from the device's own pressure by its range.
 * @throws InputError when a reading names a range that the device lacks, or one without its coefficients
 */
export function workFlows(
  calculation: Calculation,
  id: string,
  title: string,
  around: FlowSurroundings,
): WorkedFlows {
  const { run, path, device, density, nominal } = around
  const densities = { rho_cal: referenceDensity(device), rho_d: density }
  const conversion =
    run.flowStatedAt && conversions[nominal ? 'standard air' : 'device air'][run.flowStatedAt]
  // The mass of a flow of the air in the device goes with its density; what a device shows for other air with the root.
  const typedPower =
    (run.flowStatedAt ?? (nominal ? 'reference air' : 'device air')) === 'device air' ? 1 : 0.5
  const typing = { stated: workStated(calculation, id, title, around, densities), conversion, typedPower }
  if (conversion || !run.readings.every(isTyped))
    return workEachFlow(calculation, id, title, around, densities, typing)
  return {
    otherMeaning: typing.stated,
    device: undefined,
    usesReferenceDensity: false,
    flows: typedFlows(run, path),
    densityPowers: run.readings.map(() => typedPower),
  }
}

const isTyped = ({ flow_m3_h, devicePressure_Pa, devices }: Reading): boolean =>
  flow_m3_h !== undefined && devicePressure_Pa === undefined && devices === undefined

/** What another answer to "flows of which air?" would change, where some flows were typed and nobody said. */
function workStated(
  calculation: Calculation,
  id: string,
  title: string,
  { run, device, nominal }: FlowSurroundings,
  densities: Densities,
): Given | undefined {
  if (run.flowStatedAt !== undefined || !run.readings.some(hasTyped)) return undefined
  const stated = calculation.add(`${id}.stated`, `${title}: air the typed flows are stated for`, statedAir, {
    rho_d: densities.rho_d,
    // What the answer would change, not what any figure rests on.
    rho_cal: device?.referenceDensity_kg_m3
      ? densities.rho_cal
      : byRule(constantValue('rho_0'), 'usual reference density of devices'),
  })
  const change = stated.ref(nominal ? 'f_a' : 'f_r')
  return Math.abs(change.value) >= NEGLIGIBLE ? change : undefined
}

const hasTyped = ({ flow_m3_h, devices }: Reading): boolean =>
  devices ? devices.some((one) => one.flow_m3_h !== undefined) : flow_m3_h !== undefined

interface Densities {
  readonly rho_cal: Given
  readonly rho_d: Given
}

interface Typing {
  readonly stated: Given | undefined
  readonly conversion: Conversion | undefined
  readonly typedPower: number
}

/** The flows of a run one by one, where not all are taken as they were typed. */
function workEachFlow(
  calculation: Calculation,
  id: string,
  title: string,
  around: FlowSurroundings,
  densities: Densities,
  { stated, conversion, typedPower }: Typing,
): WorkedFlows {
  const { run, path } = around
  const singles = run.readings.map((reading, row): Single[] =>
    reading.devices
      ? reading.devices.map((one, j) => ({ reading: one, row, device: j }))
      : [{ reading, row }],
  )
  const all = singles.flat()
  const typed = all.filter(({ reading }) => reading.flow_m3_h !== undefined)
  const flowAsTyped = (single: Single): Given =>
    fromRecord(`${pathOf(path, single)}.flow_m3_h`, single.reading.flow_m3_h ?? Number.NaN)
  const typedBlock =
    typed.length > 0 && conversion
      ? calculation.add(`${id}.typed`, `${title}, from the flow as typed`, conversion, {
          q_s: columnOf(typed.map(flowAsTyped)),
          ...densities,
        })
      : undefined
  const device = workDevicePressures(calculation, id, title, around, all, densities)
  let [nextTyped, nextPressure] = [0, 0]
  const flowOf = (single: Single): { flow: Given; power: number } => {
    if (single.reading.flow_m3_h === undefined) {
      if (!device) throw new InputError([{ path: pathOf(path, single), message: 'reading has no air flow' }])
      return { flow: device.refRow('q_d', nextPressure++), power: 0.5 }
    }
    const flow = typedBlock ? typedBlock.refRow('q_t', nextTyped++) : flowAsTyped(single)
    return { flow, power: typedPower }
  }
  const rows = singles.map((devices, i) => {
    const each = devices.map(flowOf)
    const [only, second] = each
    if (only && !second) return only
    const sum = calculation.add(`${id}s${i + 1}`, `${title}: reading ${i + 1}, all devices`, severalDevices, {
      q_j: columnOf(each.map(({ flow }) => flow)),
    })
    const weighted = each.reduce((total, { flow, power }) => total + flow.value * power, 0)
    return { flow: sum.ref('q_m'), power: weighted / sum.value('q_m') }
  })
  return {
    otherMeaning: stated,
    device,
    usesReferenceDensity:
      (typedBlock !== undefined && run.flowStatedAt === 'reference air') || device !== undefined,
    flows: columnOf(rows.map(({ flow }) => flow)),
    densityPowers: rows.map(({ power }) => power),
  }
}

/** Flows from the devices' own pressures, in the order of the readings; undefined where none was logged. */
function workDevicePressures(
  calculation: Calculation,
  id: string,
  title: string,
  { path: run, device, nominal }: FlowSurroundings,
  all: readonly Single[],
  densities: Densities,
): WorkedFlows['device'] {
  const ranges = rangesOf(device)
  const columns = { dp_d: [] as Given[], c_d: [] as Given[], m_d: [] as Given[] }
  for (const single of all) {
    const { reading } = single
    if (reading.devicePressure_Pa === undefined) continue
    const path = pathOf(run, single)
    const { range, path: rangePath } = named(ranges, reading.range ?? '', `${path}.range`)
    if (range.coefficient === undefined || range.exponent === undefined)
      throw new InputError([
        { path: rangePath, message: `range "${range.label}" has no coefficient and exponent` },
      ])
    columns.dp_d.push(fromRecord(`${path}.devicePressure_Pa`, reading.devicePressure_Pa))
    columns.c_d.push(fromRecord(`${rangePath}.coefficient`, range.coefficient))
    columns.m_d.push(fromRecord(`${rangePath}.exponent`, range.exponent))
  }
  if (columns.dp_d.length === 0) return undefined
  const given = {
    dp_d: columnOf(columns.dp_d),
    c_d: columnOf(columns.c_d),
    m_d: columnOf(columns.m_d),
  }
  return nominal
    ? calculation.add(id, title, flowDeviceStandard, { ...given, rho_cal: densities.rho_cal })
    : calculation.add(id, title, flowDevice, { ...given, ...densities })
}

const typedFlows = ({ readings }: Run, path: string): Column =>
  columnFromRecord(
    readings.map(({ flow_m3_h = Number.NaN }) => flow_m3_h),
    (row) => `${path}.readings[${row}].flow_m3_h`,
  )

function named(ranges: ReadonlyMap<string, NamedRange>, label: string, path: string): NamedRange {
  const found = ranges.get(label)
  if (found) return found
  const known = [...ranges.keys()].map((name) => `"${name}"`).join(', ') || 'none'
  throw new InputError([{ path, message: `the flow device has no range "${label}" (its ranges: ${known})` }])
}

function referenceDensity(device: FlowDevice | undefined): Given {
  const given = device?.referenceDensity_kg_m3
  return given === undefined
    ? assumed(constantValue('rho_0'), 'assumed-reference-density')
    : fromRecord('flowDevice.referenceDensity_kg_m3', given)
}
