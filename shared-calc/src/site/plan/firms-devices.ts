import type { LibraryDevice, LibraryGauge } from '../../contract/library.js'
import type { PlannedDevice, PlannedGauge } from '../../contract/record/index.js'
import type { PlanRequest } from './request.js'

/** A request that names no equipment of its own, with the firm's devices and gauges put in. */
export function withFirmsEquipment(
  request: PlanRequest,
  devices: readonly LibraryDevice[],
  gauges: readonly LibraryGauge[],
): PlanRequest {
  const { plan } = request
  return {
    ...request,
    plan: {
      ...plan,
      ...(plan.devices === undefined && devices.length > 0 && { devices: devices.map(planned) }),
      ...(plan.gauges === undefined &&
        gauges.length > 0 && {
          gauges: gauges.map(
            ({ name, serial, calibrationDue }): PlannedGauge => ({
              name,
              ...(serial !== undefined && { serial }),
              ...(calibrationDue !== undefined && { calibrationDue }),
            }),
          ),
        }),
    },
  }
}

function planned({ format: _, notes: _notes, calibrations: _past, ...device }: LibraryDevice): PlannedDevice {
  return device
}
