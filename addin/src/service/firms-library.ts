import { HostError } from '../host/host.js'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'
import { libraryFault } from './service-problem.js'

const LIMIT_MS = 8000

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
