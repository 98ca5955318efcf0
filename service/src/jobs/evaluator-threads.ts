import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { EvaluationBytes, EvaluationOrder } from './evaluation.js'
import type { Batch, Outcomes } from './evaluator-thread.js'
import { TooLong } from './in-thread.js'
import type { Outcome } from './outcome.js'

/** Where batches of evaluations are worked on. */
export interface Batches {
  /**
   * @param deadline_ms - longest time until the outcomes are there; then rejected with TooLong
   * @returns an outcome for each order
   */
  run(
    orders: readonly EvaluationOrder[],
    deadline_ms: number,
  ): Promise<readonly (Outcome<EvaluationBytes> | undefined)[]>
}

export interface EvaluatorThreads extends Batches {
  /** Ends the threads, even if they are working. */
  destroy(): Promise<void>
  /** The threads there are, for tests that end one. */
  readonly workers: readonly Worker[]
}

const ENTRY = fileURLToPath(new URL('./evaluator-thread.js', import.meta.url))
/** An evaluation leaves some hundred kB to collect: with V8's small default for threads they would be collected too often. */
const MEMORY = { maxOldGenerationSizeMb: 512, maxYoungGenerationSizeMb: 64 }
/** The longest time a timer can be set to. */
const LONGEST_ms = 2 ** 31 - 1

/**
 * Threads for evaluations alone: one message there, one back. A task of the pool brings a channel and a cell of shared memory
 * along, so that it can be called off and timed; making these takes longer than a small evaluation does (measured: 0.7 ms a
 * task). A second thread is started when the first has something to do.
 */
export function startEvaluators(most: number, file = ENTRY): EvaluatorThreads {
  const threads = [new Thread(file)]
  return {
    run: (orders, deadline_ms) => {
      let thread = threads.reduce((least, next) => (next.inHand < least.inHand ? next : least))
      if (thread.inHand > 0 && threads.length < most) {
        thread = new Thread(file)
        threads.push(thread)
      }
      return thread.run(orders, deadline_ms)
    },
    destroy: async () => void (await Promise.all(threads.map((thread) => thread.destroy()))),
    get workers() {
      return threads.flatMap(({ worker }) => worker ?? [])
    },
  }
}

interface Sent {
  readonly batch: Batch
  readonly timer: NodeJS.Timeout
  readonly resolve: (outcomes: Outcome<EvaluationBytes>[]) => void
  readonly reject: (error: Error) => void
}

/** One thread. Batches are answered in the order in which they were sent, so the oldest is the one it works on. */
class Thread {
  worker: Worker | undefined
  private readonly sent: Sent[] = []
  private isOver = false

  constructor(private readonly file: string) {
    this.worker = this.start()
  }

  get inHand(): number {
    return this.sent.length
  }

  run(
    orders: readonly EvaluationOrder[],
    deadline_ms: number,
  ): Promise<readonly (Outcome<EvaluationBytes> | undefined)[]> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => this.giveUp(one), Math.min(deadline_ms, LONGEST_ms))
      const one: Sent = { batch: packed(orders), timer, resolve, reject }
      this.sent.push(one)
      this.worker ??= this.start()
      this.worker.postMessage(one.batch)
    })
  }

  async destroy(): Promise<void> {
    this.isOver = true
    await this.worker?.terminate()
  }

  private start(): Worker {
    const worker = new Worker(this.file, { resourceLimits: MEMORY })
    let why = new Error('the thread has ended')
    worker.on('message', (outcomes: Outcomes) => this.next()?.resolve(unpacked(outcomes)))
    worker.on('error', (error) => {
      why = error
    })
    worker.on('exit', () => this.ended(why))
    return worker
  }

  private next(): Sent | undefined {
    const one = this.sent.shift()
    clearTimeout(one?.timer)
    return one
  }

  private giveUp(one: Sent): void {
    one.reject(new TooLong())
    // A batch behind another has not begun; its outcomes are discarded when they come.
    if (one === this.sent[0]) void this.worker?.terminate()
  }

  /** The thread ended with the batch it was working on; the batches behind it go to a new thread. */
  private ended(why: Error): void {
    this.worker = undefined
    this.next()?.reject(why)
    if (this.isOver) for (let one = this.next(); one; one = this.next()) one.reject(why)
    if (this.sent.length === 0) return
    this.worker = this.start()
    for (const { batch } of this.sent) this.worker.postMessage(batch)
  }
}

function unpacked({ bytes, outcomes }: Outcomes): Outcome<EvaluationBytes>[] {
  return outcomes.map((one) => {
    if (!one.ok) return one
    const { start, end, digest, outcome } = one.value
    return { ok: true, value: { json: bytes.subarray(start, end), digest, outcome } }
  })
}

function packed(orders: readonly EvaluationOrder[]): Batch {
  // Memory of its own: a small Buffer is a view of a larger one, all of which would be sent.
  const bytes = new Uint8Array(orders.reduce((sum, { body }) => sum + body.length, 0))
  let at = 0
  return {
    bytes,
    orders: orders.map(({ body, trace, uncertainty }) => {
      const start = at
      bytes.set(body, start)
      at += body.length
      return { start, end: at, trace, uncertainty }
    }),
  }
}
