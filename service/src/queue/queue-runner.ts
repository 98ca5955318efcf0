import { resolve } from 'node:path'
import { Queue, QueueEvents } from 'bullmq'
import type { ArchiveResult, ArchiveTask, FileOrder } from '../archive/archive-tasks.js'
import type { FileRunner } from '../archive/run-archive.js'
import { checkResult } from './check-result.js'
import { connect, firstWork } from './connect.js'
import {
  clearOld,
  contentOf,
  expireAfter,
  type FileJob,
  jobIdOf,
  KEPT_s,
  QUEUE_NAME,
  UNTAKEN_s,
} from './file-jobs.js'

/** Jobs in hand at a time: enough for a few dozen workers, few enough to keep Redis small. */
const AT_ONCE = 64

/**
 * Hands files to workers on this and other machines. They must see the files under the same paths.
 * @param say - is given a line to print while files wait and no worker is there
 */
export async function startQueue(
  url: string,
  say: (line: string) => void = () => undefined,
): Promise<FileRunner> {
  const connection = await connect(url)
  const queue = new Queue<FileJob>(QUEUE_NAME, { connection })
  const events = new QueueEvents(QUEUE_NAME, { connection: connection.duplicate() })
  // Every running job listens to both; Node would report more than ten listeners as a leak.
  for (const emitter of [queue, events]) emitter.setMaxListeners(AT_ONCE * 4)
  await events.waitUntilReady()
  await firstWork(url, () => clearOld(queue)).catch(async (error: unknown) => {
    await events.close()
    connection.disconnect()
    throw error
  })
  const watch = watchWorkers(queue, say)
  return {
    atOnce: AT_ONCE,
    run: async <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) => {
      const path = resolve(order.path)
      const data: FileJob = { task, order: { ...order, path }, content: await contentOf(path) }
      const jobId = jobIdOf(data)
      const before = await queue.getJob(jobId)
      // A file that failed before deserves another chance; one that is done, or being done, does not.
      if (before && (await before.isFailed())) await before.remove()
      const job = await queue.add(task, data, {
        jobId,
        removeOnComplete: { age: KEPT_s },
        removeOnFail: { age: KEPT_s },
      })
      await expireAfter(connection, queue, job, (await job.isCompleted()) ? KEPT_s : KEPT_s + UNTAKEN_s)
      const result: unknown = await finished(job.waitUntilFinished(events), signal)
      try {
        return checkResult(task, { job: jobId, file: order.file }, result) as ArchiveResult<Task>
      } catch (error) {
        // It would else be given again to whoever asks next.
        await job.remove().catch(() => undefined)
        throw error
      }
    },
    close: async () => {
      watch.stop()
      await events.close()
      await queue.close()
      connection.disconnect()
    },
  }
}

/** What comes of a job, or the signal's reason. The listener goes with the job: a run has thousands of them. */
async function finished(work: Promise<unknown>, signal: AbortSignal): Promise<unknown> {
  let stop = (): void => undefined
  const fallen = new Promise<never>((_, reject) => {
    stop = () => reject(signal.reason as Error)
    signal.addEventListener('abort', stop, { once: true })
  })
  try {
    return await Promise.race([work, fallen])
  } finally {
    signal.removeEventListener('abort', stop)
  }
}

/** How often it is looked whether a worker is there. */
const LOOK_MS = 3000

/** Says once that files wait and no worker is there, and again after the next worker has gone. */
function watchWorkers(queue: Queue, say: (line: string) => void): { stop(): void } {
  let said = false
  const look = async () => {
    const [workers, waiting] = await Promise.all([queue.getWorkersCount(), queue.getWaitingCount()])
    const none = workers === 0 && waiting > 0
    if (none && !said)
      say(
        `draughtbook: no worker is connected to the queue; ${waiting === 1 ? '1 file waits' : `${waiting} files wait`}. Start one with: draughtbook worker --queue redis://… --root FOLDER`,
      )
    said = none
  }
  // Redis may refuse the list of its clients, or be away for a moment: neither stops the work.
  const timer = setInterval(() => void look().catch(() => undefined), LOOK_MS)
  return { stop: () => clearInterval(timer) }
}
