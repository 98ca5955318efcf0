import type { AddressInfo } from 'node:net'
import type { Logger } from 'pino'
import { createApp } from '../app.js'
import { type Pool, startPool } from '../jobs/pool.js'
import { Metrics } from '../seen/metrics.js'
import type { Settings } from '../settings/settings.js'
import { makeServer } from './make-server.js'
import { RunningState } from './state.js'
import { stop } from './stop.js'
import { readTlsFiles } from './tls-files.js'
import { warmUp } from './warm-up.js'

export interface Running {
  readonly url: string
  readonly state: RunningState
  readonly pool: Pool
  /** Finishes what was begun, then ends. Resolves to whether everything was finished in time. */
  stop(): Promise<boolean>
}

/** Starts the service. Rejects when the address is taken or a file of the settings cannot be read. */
export async function start(settings: Settings, log: Logger): Promise<Running> {
  const tls = await readTlsFiles(settings)
  const pool = startPool(settings)
  try {
    await warmUp(pool)
    const state = new RunningState(settings.concurrency)
    const metrics = new Metrics({ inHand: () => state.inHand, waiting: () => pool.waiting })
    const server = makeServer(createApp({ settings, jobs: pool, log, state, metrics }), tls)
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject)
      server.listen(settings.port, settings.host, resolve)
    })
    const { port } = server.address() as AddressInfo
    const scheme = tls ? 'https' : 'http'
    const host = settings.host.includes(':') ? `[${settings.host}]` : settings.host
    return {
      url: `${scheme}://${host}:${port}`,
      state,
      pool,
      stop: () => stop({ server, pool, state, settings }),
    }
  } catch (error) {
    await pool.close()
    throw error
  }
}
