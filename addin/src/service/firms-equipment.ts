import type { LibraryDevice, LibraryGauge } from '@draughtbook/shared-calc'
import { HostError } from '../host/host.js'
import type { ListRow } from '../pane/test/lists.js'

const LIMIT_MS = 8000

/** Rows for the plan from the firm's library on the service that serves this page. Throws HostError in words. */
export async function firmsEquipment(base: URL): Promise<{ devices: ListRow[]; gauges: ListRow[] }> {
  const [devices, gauges] = await Promise.all([
    entriesOf<LibraryDevice>(new URL('v1/library/devices', base)),
    entriesOf<LibraryGauge>(new URL('v1/library/gauges', base)),
  ])
  return { devices: devices.map(equipmentRow), gauges: gauges.map(equipmentRow) }
}

async function entriesOf<T>(address: URL): Promise<T[]> {
  let answer: Response
  try {
    answer = await fetch(address, { signal: AbortSignal.timeout(LIMIT_MS) })
  } catch {
    throw new HostError('unsupported', 'The service cannot be reached: enter the devices by hand.')
  }
  if (answer.status === 404) throw new HostError('unsupported', 'The service has no library of devices.')
  if (!answer.ok) throw new HostError('unsupported', `The service answered ${answer.status}.`)
  const { entries } = (await answer.json()) as { entries: { value: T }[] }
  return entries.map(({ value }) => value)
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
