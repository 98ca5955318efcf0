import type { Server } from 'node:http'
import { setTimeout as wait } from 'node:timers/promises'
import type { Settings } from '../settings/settings.js'
import type { RunningState } from './state.js'

interface Parts {
  readonly server: Server
  /** Ends the threads. */
  readonly close: () => Promise<void>
  readonly state: RunningState
  readonly settings: Settings
}

/**
 * Stops in the order that loses nothing: say "not ready", go on for a moment so that a balancer notices, take no new
 * connections, finish the requests in hand, end the workers.
 */
export async function stop({ server, close, state, settings }: Parts): Promise<boolean> {
  state.stopping = true
  await wait(settings.drain_s * 1000)
  const closed = new Promise<void>((resolve) => server.close(() => resolve()))
  // A kept-alive connection is idle between requests again and again; each time it is closed then.
  const sweep = setInterval(() => server.closeIdleConnections(), 50)
  server.closeIdleConnections()
  const finished = await Promise.race([
    closed.then(() => true),
    wait(settings.grace_s * 1000, false, { ref: false }),
  ])
  clearInterval(sweep)
  if (!finished) server.closeAllConnections()
  await close()
  return finished
}
