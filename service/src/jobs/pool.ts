import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { errorCode } from '../files/file-fault.js'
import { HttpFault } from '../http/http-fault.js'
import type { Jobs } from './jobs.js'
import { type Outcome, unwrap } from './outcome.js'
import type { TaskInput, TaskName, TaskResult } from './tasks.js'
import type { Order } from './worker.js'

export interface PoolOptions {
  readonly workers: number
  /** Most tasks that wait; more are turned away. */
  readonly queue: number
  /** Memory of one worker, MB. */
  readonly memory_MB?: number
  /** File of the worker's entry. */
  readonly file?: string
}

export interface Pool extends Jobs {
  /** Tasks that wait for a worker. */
  readonly waiting: number
  /** The threads, for tests that end one. */
  readonly pool: Piscina
}

const ENTRY = fileURLToPath(new URL('./worker.js', import.meta.url))

/** Worker threads with a bounded queue. A task whose worker dies is tried once more: tasks change nothing, so that is safe. */
export function startPool(options: PoolOptions): Pool {
  const { workers, queue, memory_MB = 512, file = ENTRY } = options
  const pool = new Piscina({
    filename: file,
    minThreads: 1,
    maxThreads: workers,
    idleTimeout: 60_000,
    resourceLimits: { maxOldGenerationSizeMb: memory_MB },
  })
  // A worker that dies with nothing to do is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined)
  // Counted here: the pool's own bound does not count tasks that can be called off.
  let inHand = 0
  const run = (order: Order, signal: AbortSignal): Promise<unknown> => pool.run(order, { signal })
  const twice = (order: Order, signal: AbortSignal): Promise<unknown> =>
    run(order, signal).catch((error: unknown) => {
      if (isCrash(error) && !signal.aborted) return run(order, signal)
      throw error
    })
  return {
    pool,
    get waiting() {
      return Math.max(0, inHand - workers)
    },
    run: async <Name extends TaskName>(name: Name, input: TaskInput<Name>, signal: AbortSignal) => {
      if (inHand >= workers + queue) throw overloaded()
      inHand++
      try {
        return unwrap((await twice({ name, input }, signal).catch(refused)) as Outcome<TaskResult<Name>>)
      } finally {
        inHand--
      }
    },
    close: () => pool.close(),
  }
}

const isCrash = (error: unknown) => error instanceof Error && error.message.startsWith('worker exited')

/** What went wrong with the pool itself, as an answer. */
function refused(error: unknown): never {
  if (errorCode(error) === 'ERR_WORKER_OUT_OF_MEMORY')
    throw new HttpFault(422, 'The input needs more memory than one request may use', {
      kind: 'too-much-work',
    })
  throw error
}

/** Too much to do at the moment. */
export const overloaded = () =>
  new HttpFault(503, 'The service is busy', {
    kind: 'busy',
    detail: 'too many requests are waiting; try again shortly',
    headers: { 'retry-after': '2' },
  })
