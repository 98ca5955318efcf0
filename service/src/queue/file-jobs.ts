import { createHash } from 'node:crypto'
import { CALCULATION_VERSION, canonicalJson } from '@draughtbook/shared-calc'
import { Layout, LIMITS } from '@draughtbook/shared-calc/log'
import type { Job, Queue } from 'bullmq'
import type { Redis } from 'ioredis'
import { z } from 'zod'
import type { ArchiveResult, ArchiveTask, FileOrder } from '../archive/archive-tasks.js'
import { readRegular } from '../files/read-regular.js'

/** Name of the queue in Redis. */
export const QUEUE_NAME = 'draughtbook-files'

/** One file's job as it is in Redis. */
export const FileJob = z.strictObject({
  task: z.enum(['register', 'records', 'rerun']),
  order: z.strictObject({
    path: z.string(),
    file: z.string(),
    layouts: z.array(Layout),
    keys: z.array(z.string()),
    requireSignature: z.boolean().exactOptional(),
  }),
  content: z.string().nullable(),
})
export interface FileJob {
  readonly task: ArchiveTask
  readonly order: FileOrder
  /** SHA-256 of the file when it was handed over; null where it could not be read. */
  readonly content: string | null
}

/** What a worker sends back: with the name of the job, so that it cannot be taken for the result of another. */
export interface JobResult<Task extends ArchiveTask = ArchiveTask> {
  readonly job: string
  readonly result: ArchiveResult<Task>
}

/** How often a file is tried before it is set aside. */
export const JOB_TRIES = 3

/** SHA-256 of a file's bytes; null where it cannot be read. Size and time would stay the same for many a change. */
export const contentOf = (path: string): Promise<string | null> =>
  readRegular(path, LIMITS.fileBytes).then(
    (bytes) => createHash('sha256').update(bytes).digest('hex'),
    () => null,
  )

/**
 * Name of a job, the same for the same work: content of the file, what is asked, calculation version. Handing it over
 * twice makes one job, and a run that is begun again finds what is already done.
 */
export function jobIdOf(job: FileJob): string {
  const text = canonicalJson({ ...job, version: CALCULATION_VERSION })
  return createHash('sha256').update(text).digest('hex')
}

/** Results are kept so long for a run that is begun again, and jobs that no worker takes so long. */
export const KEPT_s = 3600
export const UNTAKEN_s = 24 * 3600

/**
 * Redis itself forgets the data of a job after a time, also where no worker or client runs any more to remove it: what
 * the job holds, and the stream of events, in which results are sent.
 */
export async function expireAfter(
  redis: Redis,
  queue: Queue,
  { id = '' }: Pick<Job, 'id'>,
  seconds: number,
): Promise<void> {
  await redis.expire(queue.toKey(id), seconds)
  await redis.expire(queue.toKey('events'), KEPT_s)
}

/** Removes what is older: the queue itself does so only when the next job is done. */
export async function clearOld(queue: Queue): Promise<void> {
  const most = 10_000
  await queue.clean(KEPT_s * 1000, most, 'completed')
  await queue.clean(KEPT_s * 1000, most, 'failed')
  await queue.clean(UNTAKEN_s * 1000, most, 'wait')
}
