import { LibraryDevice, LibraryGauge, type PlanRequest, withFirmsEquipment } from '@draughtbook/shared-calc'
import type { Library } from './library.js'

/** A plan that names no equipment, with the firm's put in. */
export async function firmsPlan(request: PlanRequest, library: Library): Promise<PlanRequest> {
  const [devices, gauges] = await Promise.all([library.list('devices'), library.list('gauges')])
  return withFirmsEquipment(
    request,
    devices.entries.map(({ value }) => LibraryDevice.parse(value)),
    gauges.entries.map(({ value }) => LibraryGauge.parse(value)),
  )
}
