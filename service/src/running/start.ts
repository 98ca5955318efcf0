import type { AddressInfo } from 'node:net'
import type { Logger } from 'pino'
import { createApp } from '../app.js'
import { type Sweeping, startSweeping } from '../archive/upload-folders.js'
import { evaluatorOn, MOST_EVALUATORS } from '../jobs/evaluator.js'
import { startEvaluators } from '../jobs/evaluator-threads.js'
import { type Pool, startPool } from '../jobs/pool.js'
import { Metrics } from '../seen/metrics.js'
import { isOpen, type Settings } from '../settings/settings.js'
import { makeServer, readTlsFiles } from './make-server.js'
import { RunningState } from './state.js'
import { stop } from './stop.js'
import { warmUp } from './warm-up.js'

export interface Running {
  readonly url: string
  readonly state: RunningState
  readonly pool: Pool
  /** Fulfilled once every kind of thread has done a first piece of work. */
  readonly warm: Promise<void>
  /** Finishes what was begun, then ends. Resolves to whether everything was finished in time. */
  stop(): Promise<boolean>
}

/** The threads of the service: for the same kind of work the same, so that nothing quick waits behind what is long. */
function startThreads(settings: Settings) {
  const { workers, queue } = settings
  const evaluatorThreads = Math.min(workers, MOST_EVALUATORS)
  return {
    evaluatorThreads,
    // Evaluations are small, and a workbook in front of them would make them wait.
    evaluators: startEvaluators(evaluatorThreads),
    pool: startPool({ workers, queue }),
    // Archives and long series.
    long: startPool({ workers, queue, idle: 0 }),
  }
}

/**
 * Starts the service: it listens, and answers /healthz, before its threads are warm. Rejects when the address is taken or a file
 * of the settings cannot be read.
 */
export async function start(settings: Settings, log: Logger): Promise<Running> {
  const tls = await readTlsFiles(settings)
  const { evaluatorThreads, evaluators, pool, long } = startThreads(settings)
  const pools = [evaluators, pool, long]
  const evaluator = evaluatorOn(evaluators, evaluatorThreads, settings.timeout_s)
  const state = placesFor(settings)
  let sweeping: Sweeping | undefined
  try {
    sweeping = await startSweeping()
    const metrics = new Metrics({
      inHand: () => state.inHand,
      waiting: () => state.waiting + pool.waiting + long.waiting + evaluator.waiting,
    })
    const { evaluate } = evaluator
    const app = createApp({ settings, jobs: pool, longJobs: long, evaluate, log, state, metrics })
    const server = makeServer(app, tls)
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject)
      server.listen(settings.port, settings.host, resolve)
    })
    const { port } = server.address() as AddressInfo
    const scheme = tls ? 'https' : 'http'
    const host = settings.host.includes(':') ? `[${settings.host}]` : settings.host
    const ended = sweeping
    return {
      url: `${scheme}://${host}:${port}`,
      state,
      pool,
      warm: warmUp({ jobs: pool, evaluators }, state.startingUp),
      stop: async () => {
        const finished = await stop({ server, pools, state, settings })
        await ended.end()
        return finished
      },
    }
  } catch (error) {
    await sweeping?.end()
    await Promise.all(pools.map((one) => one.destroy()))
    throw error
  }
}

/** Waits of this length are hardly felt, and most bursts are over by then. */
const WAIT_ms = 500
/** For each place, so many may wait for one: about as many as a quick machine answers within the wait, in some 50 MB. */
const WAITING_PER_PLACE = 16

/** Where callers are known, one of them has at most half of the places, and of those that wait. */
function placesFor(settings: Settings): RunningState {
  const ofOne = (all: number) => (isOpen(settings) ? all : Math.ceil(all / 2))
  const most = settings.concurrency
  const waiting = WAITING_PER_PLACE * most
  return new RunningState(most, ofOne(most), {
    most: waiting,
    mostOfOne: ofOne(waiting),
    wait_ms: WAIT_ms,
  })
}
