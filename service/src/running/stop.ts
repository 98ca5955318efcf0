import type { Server } from 'node:http'
import { setTimeout as wait } from 'node:timers/promises'
import type { Settings } from '../settings/settings.js'
import type { RunningState } from './state.js'

interface Parts {
  readonly server: Server
  readonly pools: readonly { destroy(): Promise<void> }[]
  readonly state: RunningState
  readonly settings: Settings
}

/**
 * Stops in the order that loses nothing: say "not ready", go on for a moment so that a balancer notices, take no new
 * connections, finish the requests in hand, end the workers.
 */
export async function stop({ server, pools, state, settings }: Parts): Promise<boolean> {
  state.stopping = true
  await wait(settings.drain_s * 1000)
  const closed = new Promise<void>((resolve) => server.close(() => resolve()))
  // A kept-alive connection is idle between requests again and again; each time it is closed then.
  const sweep = setInterval(() => server.closeIdleConnections(), 50)
  server.closeIdleConnections()
  const over = new AbortController()
  const late = wait(settings.grace_s * 1000, undefined, { signal: over.signal }).catch(() => undefined)
  const finished = await Promise.race([closed.then(() => true), late.then(() => false)])
  clearInterval(sweep)
  if (!finished) server.closeAllConnections()
  over.abort()
  // A thread may be busy with what nobody waits for any more, and for longer than anybody would wait.
  await Promise.all(pools.map((pool) => pool.destroy()))
  return finished
}
