import type { LibraryDevice, LibraryGauge } from '@draughtbook/shared-calc'
import { HostError } from '../host/host.js'
import type { ListRow } from '../pane/one-test/lists.js'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'
import { libraryFault } from './service-problem.js'

const LIMIT_MS = 8000

/** Rows for the plan from the firm's library on the service that serves this page. Throws HostError in words. */
export async function firmsEquipment(base: URL): Promise<{ devices: ListRow[]; gauges: ListRow[] }> {
  const service = new ServiceClient(base, { token: accessToken() })
  const signal = AbortSignal.timeout(LIMIT_MS)
  try {
    const [devices, gauges] = await Promise.all([
      service.library('devices', { signal }),
      service.library('gauges', { signal }),
    ])
    return {
      devices: devices.map(({ value }) => equipmentRow(value)),
      gauges: gauges.map(({ value }) => equipmentRow(value)),
    }
  } catch (error) {
    throw new HostError('unsupported', libraryFault(error))
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
