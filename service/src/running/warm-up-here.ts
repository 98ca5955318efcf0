import { setImmediate as nextTurn } from 'node:timers/promises'
import { jobsHere } from '../jobs/jobs.js'
import type { TaskInput, TaskName } from '../jobs/tasks.js'
import { makePages } from '../routes/pages.js'
import { makeLists } from '../routes/reference.js'
import { RECORD } from './warm-up-record.js'

const { building, test, conditions, runs } = RECORD

/** A body of each kind that the event loop works on itself; their results are never shown. */
const BODIES: Partial<Record<TaskName, object>> = {
  runningEstimate: { method: test.method, building, conditions, run: runs[0] },
  takeOff: {
    format: 'draughtbook/take-off@1',
    name: building.name,
    takeOff: {
      spaces: [
        {
          name: 'room',
          countsIn: 'both',
          use: 'add',
          countsAsFloor: true,
          solid: { shape: 'box', length_m: 5, width_m: 5, height_m: 4 },
        },
      ],
    },
  },
  plan: { format: 'draughtbook/plan@1', building, method: test.method, plan: {} },
  leakReport: { ...RECORD, format: 'draughtbook/record@2', leaks: { list: [] } },
}

/**
 * Does on the event loop, once and with a turn of it between two, what else the first request of each kind would wait for and hold it
 * with: loading code, building formulas, making pages.
 */
export async function warmUpHere(): Promise<void> {
  const never = new AbortController().signal
  for (const [name, body] of Object.entries(BODIES)) {
    const bytes = new TextEncoder().encode(JSON.stringify(body))
    await jobsHere.run(name as TaskName, { body: bytes } as TaskInput<TaskName>, never)
    await nextTurn()
  }
  for (const make of [makeLists, ...makePages]) {
    make()
    await nextTurn()
  }
}
