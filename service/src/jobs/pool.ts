import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { errorCode } from '../files/file-fault.js'
import { HttpFault, overloaded } from '../http/http-fault.js'
import { inThread, THREADS, TooLong } from './in-thread.js'
import type { Jobs } from './jobs.js'
import { type Outcome, unwrap } from './outcome.js'
import type { TaskInput, TaskName, TaskResult } from './tasks.js'
import type { Order } from './worker.js'

export interface PoolOptions {
  readonly workers: number
  /** Most tasks that wait; more are turned away. */
  readonly queue: number
  /** Threads kept while there is nothing to do. */
  readonly idle?: number
  /** Longest time for one task from its beginning, ms. */
  readonly deadline_ms?: number
  /** Memory of one worker, MB. */
  readonly memory_MB?: number
  /** File of the worker's entry. */
  readonly file?: string
}

export interface Pool extends Jobs {
  /** @param most_ms - longest time for the work, where it is not the pool's own */
  run<Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    signal: AbortSignal,
    most_ms?: number,
  ): Promise<TaskResult<Name>>
  /** Tasks that wait for a worker. */
  readonly waiting: number
  /** Ends the threads, even if they are working. */
  destroy(): Promise<void>
  /** The threads, for tests that end one. */
  readonly pool: Piscina
}

/** No honest input needs a fraction of it. */
const DEADLINE_MS = 60_000
const ENTRY = fileURLToPath(new URL('./worker.js', import.meta.url))

/** Worker threads with a bounded queue. A task whose worker dies is tried once more: tasks change nothing, so that is safe. */
export function startPool(options: PoolOptions): Pool {
  const { workers, queue, idle = 1, memory_MB = 512, deadline_ms = DEADLINE_MS, file = ENTRY } = options
  const pool = new Piscina({
    filename: file,
    minThreads: idle,
    maxThreads: workers,
    ...THREADS,
    resourceLimits: { maxOldGenerationSizeMb: memory_MB },
  })
  // A worker that dies with nothing to do is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined)
  // Counted here: the pool's own bound does not count tasks that can be called off.
  let inHand = 0
  const run = (order: Order, signal: AbortSignal, most_ms: number): Promise<unknown> => {
    const { result, over } = inThread(pool, order, signal, most_ms)
    // A task that its caller gave up still occupies a thread, so it keeps its place until it ends.
    inHand++
    void over.then(() => void inHand--)
    return result
  }
  const twice = (order: Order, signal: AbortSignal, most_ms: number): Promise<unknown> =>
    run(order, signal, most_ms).catch((error: unknown) => {
      if (isCrash(error) && !signal.aborted) return run(order, signal, most_ms)
      throw error
    })
  return {
    pool,
    get waiting() {
      return Math.max(0, inHand - workers)
    },
    run: async <Name extends TaskName>(
      name: Name,
      input: TaskInput<Name>,
      signal: AbortSignal,
      most_ms = deadline_ms,
    ) => {
      if (inHand >= workers + queue) throw overloaded()
      return unwrap(
        (await twice({ name, input }, signal, most_ms).catch(refused(most_ms))) as Outcome<TaskResult<Name>>,
      )
    },
    close: () => pool.close(),
    destroy: () => pool.destroy(),
  }
}

const isCrash = (error: unknown) => error instanceof Error && error.message.startsWith('worker exited')

/** What went wrong with the pool itself, as an answer. */
const refused =
  (deadline_ms: number) =>
  (error: unknown): never => {
    if (errorCode(error) === 'ERR_WORKER_OUT_OF_MEMORY')
      throw new HttpFault(422, 'The input needs more memory than one request may use', {
        kind: 'too-much-work',
      })
    if (error instanceof TooLong)
      throw new HttpFault(422, `The input takes longer than the ${deadline_ms / 1000} s allowed`, {
        kind: 'too-much-work',
      })
    throw error
  }
