import { realpath } from 'node:fs/promises'
import { sep } from 'node:path'
import { CALCULATION_VERSION } from '@draughtbook/shared-calc'
import { type Job, Queue, UnrecoverableError, Worker } from 'bullmq'
import { setAside } from '../archive/archive-tasks.js'
import { whyNot } from '../archive/run-archive.js'
import { startThreads } from '../archive/thread-runner.js'
import { connect, firstWork } from './connect.js'
import {
  clearOld,
  contentOf,
  expireAfter,
  FileJob,
  JOB_TRIES,
  type JobResult,
  jobIdOf,
  KEPT_s,
  QUEUE_NAME,
} from './file-jobs.js'
import { orAborted, Pulse } from './pulse.js'

/** How often a worker clears what is too old. */
const CLEAR_MS = 10 * 60_000

export interface WorkerOptions {
  readonly url: string
  readonly workers: number
  /** Only files under this folder are read: whoever can write into the Redis could name any other. */
  readonly root: string
  /** How long a worker may give no sign of life before its files go to others. */
  readonly silence_ms?: number
  /** How long a server that does not answer is waited for, s. */
  readonly wait_s: number
  /** Is given a line to print when the server no longer answers, and when it does again. */
  readonly say?: (line: string) => void
  readonly onDone?: (file: string) => void
}

export interface QueueWorker {
  /** Aborted once the server has not answered for as long as it is waited for; its reason says so. */
  readonly gone: AbortSignal
  /** Finishes what is in hand, unless the server does not answer: then nobody could be told of it. */
  close(): Promise<void>
}

/**
 * Takes files from the queue and works on them in threads until closed. A worker that dies leaves its jobs to others;
 * a file whose worker died three times is failed, and set aside by whoever asked for it.
 */
export async function startWorker({
  url,
  workers,
  root,
  silence_ms = 20_000,
  wait_s,
  say = () => undefined,
  onDone = () => undefined,
}: WorkerOptions): Promise<QueueWorker> {
  const connection = await connect(url)
  const queue = new Queue(QUEUE_NAME, { connection })
  queue.on('error', () => undefined)
  const pulse = new Pulse(connection, { url, wait_s, say })
  // Before the first is taken: of jobs that Redis has forgotten only the names are left.
  await firstWork(url, () => orAborted(clearOld(queue), pulse.over)).catch(async (error: unknown) => {
    await pulse.orCut(Promise.resolve(), () => connection.disconnect())
    throw error
  })
  const threads = startThreads({ workers })
  const inside = await realpath(root)
  const never = new AbortController().signal
  const worker = new Worker<FileJob, JobResult>(
    QUEUE_NAME,
    async ({ id, data }) => {
      const asked = FileJob.safeParse(data)
      if (!asked.success) throw new UnrecoverableError('the queue sent a job that cannot be used')
      const { task, order, content } = asked.data
      const job = jobIdOf(data)
      if (id !== job)
        throw new UnrecoverableError(
          `this worker has calculation version ${CALCULATION_VERSION}, and whoever handed the file over has another; install the same version everywhere`,
        )
      const path = await realpath(order.path).catch(() => undefined)
      if (path === undefined)
        return { job, result: setAside[task](order.file, 'the worker cannot find this file') }
      if (!path.startsWith(inside.endsWith(sep) ? inside : inside + sep))
        throw new UnrecoverableError('the file is outside the folder that this worker may read')
      // Only a worker that dies as a whole is tried again by another: what threads cannot finish, others cannot either.
      const result = await threads
        .run(task, { ...order, path }, never)
        .catch((error: unknown) => setAside[task](order.file, whyNot(error)))
      // The job is named after its content: another's result must not be kept under that name.
      if ((await contentOf(path)) !== content)
        throw new UnrecoverableError('the file was changed after it was handed over; run the command again')
      onDone(order.file)
      return { job, result }
    },
    {
      connection,
      concurrency: workers,
      lockDuration: silence_ms,
      stalledInterval: silence_ms / 2,
      maxStalledCount: JOB_TRIES - 1,
    },
  )
  worker.on('error', () => undefined)
  for (const event of ['completed', 'failed'] as const)
    worker.on(event, (job: Job | undefined) => {
      if (job) void expireAfter(connection, queue, job, KEPT_s).catch(() => undefined)
    })
  await worker.waitUntilReady()
  const clearing = setInterval(() => void clearOld(queue).catch(() => undefined), CLEAR_MS)
  return {
    gone: pulse.over,
    close: async () => {
      clearInterval(clearing)
      await pulse.orCut(
        worker.close().then(() => queue.close()),
        () => {
          void worker.close(true).catch(() => undefined)
          connection.disconnect()
        },
      )
      await threads.close()
    },
  }
}
