// A worker's entry for tests: says how many of its tasks were followed by a turn of the thread's event loop.
import { beginWork } from '../../../service/dist/jobs/in-thread.js'

let turns = 0

export default ({ flag, begun }) =>
  beginWork({ flag, begun }, async () => {
    const value = turns
    setImmediate(() => turns++)
    return { ok: true, value }
  })
