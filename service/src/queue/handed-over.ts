import { once } from 'node:events'
import type { Queue, QueueEvents } from 'bullmq'
import type { Redis } from 'ioredis'
import { expireAfter, type FileJob, KEPT_s, UNTAKEN_s } from './file-jobs.js'

/** How long a job is waited for before it is looked for again: word that it is done can be lost with a connection. */
const LOOK_AGAIN_MS = 15_000

/** Files that were handed over to workers. */
export class HandedOver {
  constructor(
    private readonly connection: Redis,
    private readonly queue: Queue<FileJob>,
    private readonly events: QueueEvents,
  ) {}

  /**
   * Hands a file over and waits for its result, again where the server has lost it: it may have been started anew with nothing in it.
   * @throws Error with what the worker said where the job failed
   */
  async resultOf(data: FileJob, jobId: string, signal: AbortSignal): Promise<unknown> {
    const before = await this.queue.getJob(jobId)
    // A file that failed before deserves another chance; one that is done, or being done, does not.
    if (before && (await before.isFailed())) await before.remove()
    for (;;) {
      const job = await this.queue.add(data.task, data, {
        jobId,
        removeOnComplete: { age: KEPT_s },
        removeOnFail: { age: KEPT_s },
      })
      const isDone = await job.isCompleted()
      await expireAfter(this.connection, this.queue, job, isDone ? KEPT_s : KEPT_s + UNTAKEN_s)
      const done = await this.done(jobId, signal)
      if (done) return done.result
    }
  }

  /** What came of a job once it is over; undefined where the server no longer knows it. */
  private async done(jobId: string, signal: AbortSignal): Promise<{ result: unknown } | undefined> {
    for (;;) {
      const wake = new AbortController()
      const until = AbortSignal.any([signal, wake.signal, AbortSignal.timeout(LOOK_AGAIN_MS)])
      // Listened for before it is looked: what ends between the two is not missed.
      const told = ['completed', 'failed'].map((event) =>
        once(this.events, `${event}:${jobId}`, { signal: until }),
      )
      const word = Promise.race(told).catch(() => undefined)
      try {
        const state = await this.queue.getJobState(jobId)
        const job = await this.queue.getJob(jobId)
        if (!job) return undefined
        if (state === 'completed') return { result: job.returnvalue as unknown }
        if (state === 'failed') throw new Error(job.failedReason)
        await word
        signal.throwIfAborted()
      } finally {
        wake.abort()
      }
    }
  }
}
