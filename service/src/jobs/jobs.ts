import { settle, unwrap } from './outcome.js'
import { runTask, type TaskInput, type TaskName, type TaskResult } from './tasks.js'

/** Where heavy work goes. */
export interface Jobs {
  /** @param signal - ends the work when the caller no longer wants it */
  run<Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    signal: AbortSignal,
  ): Promise<TaskResult<Name>>
  close(): Promise<void>
}

/** Work on the calling thread: for tests and for the command line, which has nothing else to do. */
export const jobsHere: Jobs = {
  run: async <Name extends TaskName>(name: Name, input: TaskInput<Name>): Promise<TaskResult<Name>> =>
    unwrap<TaskResult<Name>>(await settle(() => runTask(name, input))),
  close: async () => undefined,
}
