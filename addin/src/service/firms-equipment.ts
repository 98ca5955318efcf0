import type { LibraryDevice, LibraryGauge } from '@draughtbook/shared-calc'
import type { ListRow } from '../pane/one-test/lists.js'
import { firmsLibrary } from './firms-instruments.js'

/** Rows for the plan from the firm's library on the service that serves this page. Throws HostError in words. */
export async function firmsEquipment(base: URL): Promise<{ devices: ListRow[]; gauges: ListRow[] }> {
  const { devices, gauges } = await firmsLibrary(base)
  return {
    devices: devices.map(({ value }) => equipmentRow(value)),
    gauges: gauges.map(({ value }) => equipmentRow(value)),
  }
}

/** A library entry as a row of the plan: every number and text by its path; what a plan does not ask for stays out. */
export function equipmentRow(entry: LibraryDevice | LibraryGauge): ListRow {
  const { name, serial, calibrationDue } = entry
  const device = entry as LibraryDevice
  const ranges = (device.ranges ?? []).flatMap((range, i) =>
    Object.entries(range).map(([key, value]): [string, string] => [`ranges[${i}].${key}`, String(value)]),
  )
  const { referenceDensity_kg_m3: density } = device
  return {
    name,
    ...(serial !== undefined && { serial }),
    ...(calibrationDue !== undefined && { calibrationDue }),
    ...(density !== undefined && { referenceDensity_kg_m3: String(density) }),
    ...Object.fromEntries(ranges),
  }
}
