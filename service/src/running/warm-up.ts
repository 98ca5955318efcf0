import type { Batches } from '../jobs/evaluator-threads.js'
import { warmUpHere } from '../jobs/jobs.js'
import type { Pool } from '../jobs/pool.js'
import { makeLists } from '../routes/reference.js'

/** Enough for the engine to have compiled what every request uses. */
const TIMES = 30

/** A record of round figures; its result is never shown. */
const RECORD = {
  format: 'draughtbook/record@1',
  building: { name: 'warm-up', volume_m3: 100 },
  test: { date: '2026-01-01', method: 'iso-9972:2015' },
  conditions: { indoorTemperature_C: 20, outdoorTemperature_C: 10 },
  runs: [
    {
      direction: 'depressurisation',
      zeroFlowBefore_Pa: [0],
      zeroFlowAfter_Pa: [0],
      readings: [10, 20, 30, 40, 50, 60].map((pressure) => ({
        pressure_Pa: -pressure,
        flow_m3_h: 2 * pressure,
      })),
    },
  ],
}

interface Threads {
  readonly jobs: Pick<Pool, 'run'>
  readonly evaluators: Batches
}

/**
 * Evaluates and writes once on every kind of thread, so that requests need not wait until code is loaded and compiled. Takes as
 * long as it takes: on a busy machine the start of a thread alone may need more time than a request may.
 * @param waitsFor - names what is still waited for, while it is
 */
export async function warmUp({ jobs, evaluators }: Threads, waitsFor: Set<string>): Promise<void> {
  const body = new TextEncoder().encode(JSON.stringify(RECORD))
  const never = new AbortController().signal
  const orders = Array.from({ length: TIMES }, (_, i) => ({ body, trace: i === 0, uncertainty: false }))
  const steps = {
    'a thread that evaluates': () => evaluators.run(orders, Number.POSITIVE_INFINITY),
    'a thread that writes workbooks': () => jobs.run('workbook', { body }, never, Number.POSITIVE_INFINITY),
  }
  for (const name of Object.keys(steps)) waitsFor.add(name)
  await Promise.all([
    warmUpHere().then(makeLists),
    ...Object.entries(steps).map(async ([name, step]) => {
      await step()
      waitsFor.delete(name)
    }),
  ])
}
