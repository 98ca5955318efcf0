import type { EventEmitter } from 'node:events'
import { resolve } from 'node:path'
import { Queue, QueueEvents } from 'bullmq'
import type { ArchiveResult, ArchiveTask, FileOrder } from '../archive/archive-tasks.js'
import type { FileRunner } from '../archive/run-archive.js'
import { checkResult } from './check-result.js'
import { connect, firstWork } from './connect.js'
import { clearOld, contentOf, type FileJob, jobIdOf, QUEUE_NAME } from './file-jobs.js'
import { HandedOver } from './handed-over.js'
import { orAborted, Pulse } from './pulse.js'

/** Jobs in hand at a time: enough for a few dozen workers, few enough to keep Redis small. */
const AT_ONCE = 64

export interface QueueOptions {
  readonly url: string
  /** How long a server that does not answer is waited for, s. */
  readonly wait_s: number
  /** Is given a line to print while files wait and no worker is there, or the server does not answer. */
  readonly say?: (line: string) => void
}

/** Hands files to workers on this and other machines. They must see the files under the same paths. */
export async function startQueue({ url, wait_s, say = () => undefined }: QueueOptions): Promise<FileRunner> {
  const connection = await connect(url)
  const queue = new Queue<FileJob>(QUEUE_NAME, { connection })
  const listening = connection.duplicate()
  const events = new QueueEvents(QUEUE_NAME, { connection: listening })
  // Every running job listens to it; Node would report more than ten listeners as a leak.
  events.setMaxListeners(AT_ONCE * 4)
  // Lost connections are made again; without a listener each would be printed.
  const emitters: EventEmitter[] = [listening, queue, events]
  for (const emitter of emitters) emitter.on('error', () => undefined)
  const pulse = new Pulse(connection, { url, wait_s, say })
  const watch = watchWorkers(queue, say)
  const close = async () => {
    watch.stop()
    await pulse.orCut(Promise.all([events.close(), queue.close()]), () => {
      listening.disconnect()
      connection.disconnect()
    })
  }
  try {
    await orAborted(events.waitUntilReady(), pulse.over)
    await firstWork(url, () => orAborted(clearOld(queue), pulse.over))
  } catch (error) {
    await close()
    throw error
  }
  const jobs = new HandedOver(connection, queue, events)
  return {
    atOnce: AT_ONCE,
    gone: pulse.over,
    run: async <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) => {
      const path = resolve(order.path)
      const data: FileJob = { task, order: { ...order, path }, content: await contentOf(path) }
      const jobId = jobIdOf(data)
      const result: unknown = await orAborted(jobs.resultOf(data, jobId, signal), signal)
      try {
        return checkResult(task, { job: jobId, file: order.file }, result) as ArchiveResult<Task>
      } catch (error) {
        // It would else be given again to whoever asks next.
        await orAborted(queue.remove(jobId), signal).catch(() => undefined)
        throw error
      }
    },
    close,
  }
}

/** How often it is looked whether a worker is there. */
const LOOK_MS = 3000

/** Says once that files wait and no worker is there, and again after the next worker has gone. */
function watchWorkers(queue: Queue, say: (line: string) => void): { stop(): void } {
  let said = false
  let looking = false
  const look = async () => {
    const [workers, waiting] = await Promise.all([queue.getWorkersCount(), queue.getWaitingCount()])
    const none = workers === 0 && waiting > 0
    if (none && !said)
      say(
        `draughtbook: no worker is connected to the queue; ${waiting === 1 ? '1 file waits' : `${waiting} files wait`}. Start one with: draughtbook worker --queue redis://… --root FOLDER`,
      )
    said = none
  }
  const timer = setInterval(() => {
    // While the server is away, the last look waits for it.
    if (looking) return
    looking = true
    // Redis may refuse the list of its clients: that does not stop the work.
    void look()
      .catch(() => undefined)
      .then(() => {
        looking = false
      })
  }, LOOK_MS)
  return { stop: () => clearInterval(timer) }
}
