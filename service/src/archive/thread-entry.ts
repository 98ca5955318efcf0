import type { MessagePort } from 'node:worker_threads'
import { type ArchiveTask, archiveTasks, type FileOrder } from './archive-tasks.js'

/** What a thread is sent. */
export interface ThreadOrder {
  readonly task: ArchiveTask
  readonly order: FileOrder
  /** Told when work on the file begins: waiting for a thread, and its start, do not count. */
  readonly begun: MessagePort
}

/** Entry of a worker thread. */
export default ({ task, order, begun }: ThreadOrder): Promise<unknown> => {
  begun.postMessage('begun')
  begun.close()
  return archiveTasks[task](order)
}
