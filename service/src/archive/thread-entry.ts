import { type ArchiveTask, archiveTasks, type FileOrder } from './archive-tasks.js'

/** What a thread is sent. */
export interface ThreadOrder {
  readonly task: ArchiveTask
  readonly order: FileOrder
}

/** Entry of a worker thread. */
export default ({ task, order }: ThreadOrder): Promise<unknown> => archiveTasks[task](order)
