import { type Begins, beginWork } from '../jobs/in-thread.js'
import { type ArchiveTask, archiveTasks, type FileOrder } from './archive-tasks.js'

/** What a thread is sent. */
export interface ThreadOrder {
  readonly task: ArchiveTask
  readonly order: FileOrder
}

/** Entry of a worker thread. */
export default ({ task, order, ...begins }: ThreadOrder & Begins): Promise<unknown> =>
  beginWork<unknown>(begins, () => archiveTasks[task](order))
