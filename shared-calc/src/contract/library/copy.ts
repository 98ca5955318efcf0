import type { FlowDevice, PressureGauge } from '../record/instruments.js'
import type { Target } from '../record/target.js'
import type { LibraryDevice } from './device.js'
import type { LibraryGauge } from './gauge.js'
import type { LibraryTarget } from './target.js'

/** Names an entry of the library in the state it was copied in: `devices/fan-a@3f2a9c1b7d20e5a4`. */
export const entryName = (kind: 'devices' | 'gauges', id: string, version: string): string =>
  `${kind}/${id}@${version}`

/** The part of a device that a record carries: a later change in the library does not change the record. */
export function deviceForRecord(device: LibraryDevice, id: string, version: string): FlowDevice {
  const { format: _format, name: _name, notes: _notes, calibrations: _calibrations, ...copied } = device
  return { ...copied, libraryEntry: entryName('devices', id, version) }
}

/** The part of a gauge that a record carries. */
export function gaugeForRecord(gauge: LibraryGauge, id: string, version: string): PressureGauge {
  const { format: _format, name: _name, notes: _notes, calibrations: _calibrations, ...copied } = gauge
  return { ...copied, libraryEntry: entryName('gauges', id, version) }
}

/** The target of a record; it goes by the entry's name unless it has a label of its own. */
export const targetForRecord = ({ name, target }: LibraryTarget): Target => ({ label: name, ...target })
