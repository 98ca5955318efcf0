import { type Begins, beginWork } from './in-thread.js'
import { settle } from './outcome.js'
import { runTask, type TaskInput, type TaskName } from './tasks.js'

/** What the pool sends to a worker. */
export interface Order {
  readonly name: TaskName
  readonly input: TaskInput<TaskName>
}

/** Entry of a worker thread. */
export default ({ name, input, ...begins }: Order & Begins): Promise<unknown> =>
  beginWork(begins, () => settle(() => runTask(name, input as never)))
