import { constantValue } from '../../catalogue/constants.js'
import { InputError } from '../../contract/problem.js'
import type { DeviceRange, DeviceReading, FlowDevice, Reading, Run } from '../../contract/record/index.js'
import {
  assumed,
  type Block,
  type Calculation,
  type Column,
  columnFromRecord,
  columnOf,
  fromRecord,
  type Given,
} from '../../engine/index.js'
import { flowDevice, severalDevices } from '../../formulas/flow-device.js'

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

/**
 * Measured flow of each reading: as indicated, or from the device's own pressure by its range.
 * @throws InputError when a reading names a range that the device lacks, or one without its coefficients
 */
export function workFlows(
  calculation: Calculation,
  id: string,
  title: string,
  run: { readonly run: Run; readonly path: string },
  device: FlowDevice | undefined,
  density: Given,
): { flows: Column; device?: Block } {
  if (run.run.readings.every(isFlowAsIndicated)) return { flows: indicatedFlows(run.run, run.path) }
  const ranges = rangesOf(device)
  const columns = { dp_d: [] as Given[], c_d: [] as Given[], m_d: [] as Given[] }
  const shown = run.run.readings.map((reading, i) => {
    const path = `${run.path}.readings[${i}]`
    return (reading.devices ?? [reading]).map((single, j) => ({
      single,
      path: reading.devices ? `${path}.devices[${j}]` : path,
    }))
  })
  for (const { single, path } of shown.flat()) {
    if (single.devicePressure_Pa === undefined) continue
    const { range, path: rangePath } = named(ranges, single.range ?? '', `${path}.range`)
    if (range.coefficient === undefined || range.exponent === undefined)
      throw new InputError([
        { path: rangePath, message: `range "${range.label}" has no coefficient and exponent` },
      ])
    columns.dp_d.push(fromRecord(`${path}.devicePressure_Pa`, single.devicePressure_Pa))
    columns.c_d.push(fromRecord(`${rangePath}.coefficient`, range.coefficient))
    columns.m_d.push(fromRecord(`${rangePath}.exponent`, range.exponent))
  }
  const block =
    columns.dp_d.length === 0
      ? undefined
      : calculation.add(id, title, flowDevice, {
          dp_d: columnOf(columns.dp_d),
          c_d: columnOf(columns.c_d),
          m_d: columnOf(columns.m_d),
          rho_cal: referenceDensity(device),
          rho_d: density,
        })
  let next = 0
  const flowOf = ({ single, path }: { single: DeviceReading; path: string }): Given => {
    if (single.flow_m3_h !== undefined) return fromRecord(`${path}.flow_m3_h`, single.flow_m3_h)
    if (!block) throw new InputError([{ path, message: 'reading has no air flow' }])
    return block.refRow('q_d', next++)
  }
  const flows = shown.map((devices, i): Given => {
    const [only, second] = devices
    if (only && !second) return flowOf(only)
    return calculation
      .add(`${id}s${i + 1}`, `${title}: reading ${i + 1}, all devices`, severalDevices, {
        q_j: columnOf(devices.map(flowOf)),
      })
      .ref('q_m')
  })
  return block ? { flows: columnOf(flows), device: block } : { flows: columnOf(flows) }
}

const isFlowAsIndicated = ({ devices, devicePressure_Pa, flow_m3_h }: Reading): boolean =>
  devices === undefined && devicePressure_Pa === undefined && flow_m3_h !== undefined

const indicatedFlows = ({ readings }: Run, path: string): Column =>
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
