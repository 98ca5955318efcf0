import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'

const LIMIT_MS = 4000

/** The firm's layouts on the service that serves this page; none where it has no library, or cannot be asked. */
export async function firmsLayouts(base: URL): Promise<LayoutInput[]> {
  const service = new ServiceClient(base, { token: accessToken() })
  const signal = AbortSignal.timeout(LIMIT_MS)
  try {
    if (!(await service.firm({ signal })).library) return []
    const entries = await service.library('layouts', { signal })
    return entries.map(({ value }) => value)
  } catch {
    // A log is read without them as well; what the service refuses elsewhere is said there.
    return []
  }
}
