import { deviceForRecord, gaugeForRecord } from '@draughtbook/shared-calc'
import { HostError } from '../host/host.js'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'
import { libraryFault } from './service-problem.js'

const LIMIT_MS = 8000

/** An instrument of the firm's library: its name, and what it puts into the fields of the form. */
export interface OfferedInstrument {
  readonly id: string
  readonly name: string
  /** By field path of the record, as in `flowDevice.ranges[0].label`. */
  readonly fields: Readonly<Record<string, string>>
}

export interface OfferedInstruments {
  readonly devices: readonly OfferedInstrument[]
  readonly gauges: readonly OfferedInstrument[]
}

/** Devices and gauges of the firm's library on the service that serves this page. Throws HostError in words. */
export async function firmsLibrary(base: URL) {
  const service = new ServiceClient(base, { token: accessToken() })
  const signal = AbortSignal.timeout(LIMIT_MS)
  try {
    const [devices, gauges] = await Promise.all([
      service.library('devices', { signal }),
      service.library('gauges', { signal }),
    ])
    return { devices, gauges }
  } catch (error) {
    throw new HostError('unsupported', libraryFault(error))
  }
}

/** The firm's devices and gauges on the service that serves this page. Throws HostError in words. */
export async function firmsInstruments(base: URL): Promise<OfferedInstruments> {
  const { devices, gauges } = await firmsLibrary(base)
  return {
    devices: devices.map(({ id, version, value }) => ({
      id,
      name: value.name,
      fields: fieldsOf(deviceForRecord(value, id, version), 'flowDevice'),
    })),
    gauges: gauges.map(({ id, version, value }) => ({
      id,
      name: value.name,
      fields: fieldsOf(gaugeForRecord(value, id, version), 'pressureGauge'),
    })),
  }
}

/** Every number and text of a part of the record by its path. */
function fieldsOf(held: unknown, path: string): Record<string, string> {
  if (Array.isArray(held))
    return Object.assign({}, ...held.map((one: unknown, i) => fieldsOf(one, `${path}[${i}]`)))
  if (typeof held !== 'object' || held === null) return { [path]: String(held) }
  return Object.assign({}, ...Object.entries(held).map(([key, one]) => fieldsOf(one, `${path}.${key}`)))
}
