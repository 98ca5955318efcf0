import { resolve } from 'node:path'
import { Queue, QueueEvents } from 'bullmq'
import type { ArchiveResult, ArchiveTask, FileOrder } from '../archive/archive-tasks.js'
import type { FileRunner } from '../archive/run-archive.js'
import { checkResult } from './check-result.js'
import { connect } from './connect.js'
import { clearOld, type FileJob, jobIdOf, KEPT_s, QUEUE_NAME } from './file-jobs.js'

/** Jobs in hand at a time: enough for a few dozen workers, few enough to keep Redis small. */
const AT_ONCE = 64

/** Hands files to workers on this and other machines. They must see the files under the same paths. */
export async function startQueue(url: string): Promise<FileRunner> {
  const connection = await connect(url)
  const queue = new Queue<FileJob>(QUEUE_NAME, { connection })
  const events = new QueueEvents(QUEUE_NAME, { connection: connection.duplicate() })
  events.setMaxListeners(AT_ONCE * 4)
  await events.waitUntilReady()
  await clearOld(queue)
  return {
    atOnce: AT_ONCE,
    run: async <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) => {
      const data: FileJob = { task, order: { ...order, path: resolve(order.path) } }
      const jobId = await jobIdOf(data)
      const before = await queue.getJob(jobId)
      // A file that failed before deserves another chance; one that is done, or being done, does not.
      if (before && (await before.isFailed())) await before.remove()
      const job = await queue.add(task, data, {
        jobId,
        removeOnComplete: { age: KEPT_s },
        removeOnFail: { age: KEPT_s },
      })
      const result: unknown = await Promise.race([job.waitUntilFinished(events), fallen(signal)])
      try {
        return checkResult(task, order.file, result) as ArchiveResult<Task>
      } catch (error) {
        // It would else be given again to whoever asks next.
        await job.remove().catch(() => undefined)
        throw error
      }
    },
    close: async () => {
      await events.close()
      await queue.close()
      connection.disconnect()
    },
  }
}

const fallen = (signal: AbortSignal): Promise<never> =>
  new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason as Error), { once: true })
  })
