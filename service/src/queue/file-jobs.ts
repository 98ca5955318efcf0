import { createHash } from 'node:crypto'
import { stat } from 'node:fs/promises'
import { CALCULATION_VERSION, canonicalJson } from '@draughtbook/shared-calc'
import { Layout } from '@draughtbook/shared-calc/log'
import type { Queue } from 'bullmq'
import { z } from 'zod'
import type { ArchiveTask, FileOrder } from '../archive/archive-tasks.js'

/** Name of the queue in Redis. */
export const QUEUE_NAME = 'draughtbook-files'

/** One file's job as it lies in Redis. */
export const FileJob = z.strictObject({
  task: z.enum(['register', 'rerun']),
  order: z.strictObject({
    path: z.string(),
    file: z.string(),
    layouts: z.array(Layout),
    keys: z.array(z.string()),
  }),
})
export interface FileJob {
  readonly task: ArchiveTask
  readonly order: FileOrder
}

/** How often a file is tried before it is set aside. */
export const JOB_TRIES = 3

/**
 * Name of a job, the same for the same work: file as it is now, what is asked, calculation version. Handing it over
 * twice makes one job, and a run that is begun again finds what is already done.
 */
export async function jobIdOf({ task, order }: FileJob): Promise<string> {
  const seen = await stat(order.path).then(
    ({ size, mtimeMs }) => ({ size, mtimeMs }),
    () => null,
  )
  const text = canonicalJson({ task, order, seen, version: CALCULATION_VERSION })
  return createHash('sha256').update(text).digest('hex')
}

/** Results are kept so long for a run that is begun again, and jobs that no worker takes so long. */
export const KEPT_s = 3600
export const UNTAKEN_s = 24 * 3600

/** Removes what is older: the queue itself does so only when the next job is done. */
export async function clearOld(queue: Queue): Promise<void> {
  const most = 10_000
  await queue.clean(KEPT_s * 1000, most, 'completed')
  await queue.clean(KEPT_s * 1000, most, 'failed')
  await queue.clean(UNTAKEN_s * 1000, most, 'wait')
}
