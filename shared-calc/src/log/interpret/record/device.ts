import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import type { Direction } from '../../../contract/record/index.js'
import { plainWord } from '../../cells/fields.js'
import { RECALCULATE } from '../../cells/interpret.js'
import { shown, toRecordUnit } from '../../cells/units.js'
import { type Device, fanIn, type OwnRange } from './device-tables.js'
import type { Draft } from './draft.js'

/** The range of a reading, by the text of its ring or plate. */
export interface DeviceInRecord {
  readonly labels: readonly string[]
  rangeOf(
    text: string | undefined,
    cell: string,
    of: { readonly direction: Direction; readonly heading: string },
  ): string | undefined
}

/** The flow device's ranges into the record; answers which of them a reading's ring or plate is. */
export function putDevice(
  draft: Draft,
  device: Device | undefined,
  unstored: string | undefined,
): DeviceInRecord | undefined {
  if (!device && unstored !== undefined) {
    draft.collector.refuse('formula-without-result', RECALCULATE, unstored, 'runs')
    return undefined
  }
  if (!device) {
    draft.collector.refuse(
      'not-found',
      'the log has pressures at the flow device, but no table of its coefficients and exponents: add the table, or log the flows',
      undefined,
      'flowDevice.ranges',
    )
    return undefined
  }
  const { ranges, flowUnit, pressureUnit, density, cells } = device
  const typed = draft.answers['device.unit']
  const unit = flowUnit
  if (!unit && typed === undefined) {
    draft.ask({
      path: 'device.unit',
      cells: [cells],
      ...questions.deviceUnit(),
    })
  }
  const factor = unit
    ? toRecordUnit(1, unit)
    : typed === 'l/s'
      ? 3.6
      : typed === 'cfm'
        ? toRecordUnit(1, { kind: 'flow', unit: 'cuft/minute' })
        : 1
  const perPa = pressureUnit && pressureUnit.unit !== 'Pa' ? toRecordUnit(1, pressureUnit) : 1
  for (const [index, range] of ranges.entries()) {
    const path = `flowDevice.ranges[${index}]`
    for (const { cell, ...written } of range.figures ?? []) draft.plain(written, cell, path)
    draft.put(`${path}.label`, range.label, range.cells.label)
    draft.put(
      `${path}.coefficient`,
      (range.coefficient * factor) / perPa ** range.exponent,
      range.cells.coefficient,
    )
    draft.put(`${path}.exponent`, range.exponent, range.cells.exponent)
    if (range.minimum !== undefined) draft.put(`${path}.minimumPressure_Pa`, range.minimum * perPa)
    if (range.maximum !== undefined) draft.put(`${path}.maximumPressure_Pa`, range.maximum * perPa)
  }
  if (unit && unit.unit !== 'm^3/h')
    draft.tell(runText('log-unit/device', { unit: shown(unit.unit) }), cells, 'flowDevice.ranges')
  if (pressureUnit && perPa !== 1)
    draft.tell(
      runText('log-unit/device-pressure', { unit: shown(pressureUnit.unit) }),
      cells,
      'flowDevice.ranges',
    )
  if (density) {
    draft.put('flowDevice.referenceDensity_kg_m3', density.value, density.cell)
    draft.use(
      density.cell,
      'air density of the calibration',
      'reference density of the flow device',
      'flowDevice.referenceDensity_kg_m3',
    )
  }
  draft.use(cells, 'coefficients and exponents', 'ranges of the flow device', 'flowDevice.ranges')
  return {
    labels: [...new Set(ranges.map((range) => nameOf(range)))],
    rangeOf: (text, cell, of) => rangeOf(draft, device, text, cell, of),
  }
}

function rangeOf(
  draft: Draft,
  { ranges: all, cells }: Device,
  text: string | undefined,
  cell: string,
  of: Parameters<DeviceInRecord['rangeOf']>[2],
): string | undefined {
  const fan = fanIn(of.heading)
  const ranges = all.filter(
    (range) =>
      (range.direction ?? of.direction) === of.direction && (range.fan === undefined || range.fan === fan),
  )
  if (text === undefined) {
    const [only] = ranges
    if (ranges.length === 1 && only) return only.label
    const typed = draft.answers['device.range']
    if (typed !== undefined && ranges.some(({ label }) => label === typed)) return typed
    draft.ask({
      path: 'device.range',
      cells: [cells],
      ...questions.deviceRange({ ranges: ranges.map(({ label }) => label) }),
    })
    return undefined
  }
  const wanted = plainWord(text)
  const found =
    ranges.find((range) => nameOf(range) === wanted) ??
    ranges.find(
      (range) => ` ${wanted} `.includes(` ${nameOf(range)} `) || ` ${nameOf(range)} `.includes(` ${wanted} `),
    )
  if (!found)
    draft.collector.refuse(
      'not-found',
      `the flow device has no range "${text}": its ranges are ${ranges.map(({ label }) => label).join(', ')}`,
      cell,
      'flowDevice.ranges',
    )
  return found?.label
}

/** The name of a range in the log, without the direction or the fan it was given. */
const nameOf = ({ label, direction, fan }: OwnRange): string =>
  plainWord(direction || fan ? label.replace(/ \([^()]*\)$/, '') : label)
