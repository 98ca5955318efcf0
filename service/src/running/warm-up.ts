import type { Batches } from '../jobs/evaluator-threads.js'
import type { Pool } from '../jobs/pool.js'
import { warmUpHere } from './warm-up-here.js'
import { RECORD } from './warm-up-record.js'

/** Enough for the engine to have compiled what every request uses. */
const TIMES = 30

interface Threads {
  readonly jobs: Pick<Pool, 'run'>
  readonly evaluators: Batches
}

/**
 * Evaluates and writes once on every kind of thread, so that requests need not wait until code is loaded and compiled. Takes as
 * long as it takes: on a busy machine the start of a thread alone may need more time than a request may.
 * @param waitsFor - names what is still waited for, while it is
 * @throws Error naming what does not start
 */
export async function warmUp({ jobs, evaluators }: Threads, waitsFor: Set<string>): Promise<void> {
  const body = new TextEncoder().encode(JSON.stringify(RECORD))
  const never = new AbortController().signal
  const orders = Array.from({ length: TIMES }, (_, i) => ({ body, trace: i === 0, uncertainty: false }))
  const steps = {
    'the code for small requests': warmUpHere,
    'a thread that evaluates': () => evaluators.run(orders, Number.POSITIVE_INFINITY),
    'a thread that writes workbooks': () => jobs.run('workbook', { body }, never, Number.POSITIVE_INFINITY),
  }
  for (const name of Object.keys(steps)) waitsFor.add(name)
  await Promise.all(
    Object.entries(steps).map(async ([name, step]) => {
      await step().catch((error: unknown) => {
        throw new Error(`${name} does not start: ${error instanceof Error ? error.message : String(error)}`)
      })
      waitsFor.delete(name)
    }),
  )
}
