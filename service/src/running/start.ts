import type { AddressInfo } from 'node:net'
import type { Logger } from 'pino'
import { createApp } from '../app.js'
import { BATCHES, evaluatorOn, MOST_EVALUATORS } from '../jobs/evaluator.js'
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
  const longJobs = startPool({ workers: settings.workers, queue: settings.queue, idle: 0 })
  // Evaluations have threads of their own: they are small, and a workbook in front of them would make them wait.
  const threads = Math.min(settings.workers, MOST_EVALUATORS)
  const evaluators = startPool({ workers: threads, queue: threads * BATCHES })
  const evaluator = evaluatorOn(evaluators, threads, settings.timeout_s)
  const close = async (): Promise<void> => void (await Promise.all([pool.close(), evaluators.close()]))
  try {
    await warmUp(pool, evaluator.evaluate)
    const state = new RunningState(settings.concurrency)
    const metrics = new Metrics({
      inHand: () => state.inHand,
      waiting: () => pool.waiting + evaluator.waiting,
    })
    const { evaluate } = evaluator
    const server = makeServer(
      createApp({ settings, jobs: pool, longJobs, evaluate, log, state, metrics }),
      tls,
    )
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
      stop: () => stop({ server, close, state, settings }),
    }
  } catch (error) {
    await close()
    throw error
  }
}
