import { clientGone, HttpFault } from '../http/http-fault.js'
import { tookTooLong } from '../http/within.js'
import type { EvaluationBytes, EvaluationOrder, EvaluationText } from './evaluation.js'
import type { Batches } from './evaluator-threads.js'
import { TooLong } from './in-thread.js'
import { type Outcome, unwrap } from './outcome.js'

/**
 * Evaluates the body of a request.
 * @param wanted - whether anybody still waits for the answer
 */
export type Evaluator = (
  order: EvaluationOrder,
  wanted: () => boolean,
) => Promise<EvaluationBytes | EvaluationText>

/** On the calling thread: for tests. */
export const evaluatorHere: Evaluator = async (order) => {
  const { evaluation } = await import('./evaluation.js')
  return evaluation(order)
}

/**
 * Orders sent to a thread together. The way there and back costs about as much for several as for one: with batches of 12, a request
 * needs a seventh less processor time than with batches of 4. But with all of them in one batch the event loop has nothing to do
 * while the thread works, and the other way round. So a third of those that wait, within bounds: many wait where the event loop is
 * slow to come round again.
 */
const TOGETHER = { fewest: 12, most: 64 } as const
const batchSize = (waiting: number): number =>
  Math.min(TOGETHER.most, Math.max(TOGETHER.fewest, Math.ceil(waiting / 3)))

/** Batches for each thread: one in work, one ready. */
const BATCHES = 2
/** One event loop cannot feed more threads than these. */
export const MOST_EVALUATORS = 3

interface Item {
  readonly order: EvaluationOrder
  readonly wanted: () => boolean
  readonly resolve: (answer: EvaluationBytes | EvaluationText) => void
  readonly reject: (error: unknown) => void
}

/**
 * Evaluates on other threads, several orders at a time, so that the event loop is free for everything else. The event loop could take
 * a few by itself, and was measured to be worse: a thread that is seldom used is slow when it is, and fewer are answered a second. An
 * order that crashes its batch because of a bug fails alone: the others of the batch are run again one by one.
 * @param batches - the threads
 * @param timeout_s - the longest a batch may take; its requests are answered with 503 then, its thread is replaced
 */
export function evaluatorOn(
  batches: Batches,
  threads: number,
  timeout_s: number,
): { evaluate: Evaluator; readonly waiting: number } {
  const waiting: Item[] = []
  let onTheirWay = 0
  let planned = false

  const plan = (): void => {
    if (planned) return
    planned = true
    // After this turn of the event loop, so that orders that arrived together go together.
    setImmediate(send)
  }

  function send(): void {
    planned = false
    while (onTheirWay < threads * BATCHES && waiting.length > 0) {
      const batch = waiting.splice(0, batchSize(waiting.length)).filter(stillWanted)
      if (batch.length === 0) continue
      onTheirWay++
      void settleAll(batch).finally(() => {
        onTheirWay--
        if (waiting.length > 0) plan()
      })
    }
  }

  /** @param again - whether it was done before, and its thread ended */
  async function settleAll(batch: readonly Item[], again = false): Promise<void> {
    try {
      const outcomes = await batches.run(
        batch.map(({ order }) => order),
        timeout_s * 1000,
      )
      for (const [i, item] of batch.entries()) answer(item, () => valueIn(outcomes[i]))
    } catch (error) {
      const fault = error instanceof TooLong ? tookTooLong(timeout_s) : error
      if (fault instanceof HttpFault || again) for (const { reject } of batch) reject(fault)
      else for (const item of batch) if (stillWanted(item)) await settleAll([item], true)
    }
  }

  return {
    evaluate: (order, wanted) =>
      new Promise((resolve, reject) => {
        waiting.push({ order, wanted, resolve, reject })
        plan()
      }),
    get waiting() {
      return waiting.length
    },
  }
}

function stillWanted({ wanted, reject }: Item): boolean {
  if (wanted()) return true
  reject(clientGone())
  return false
}

function answer({ resolve, reject }: Item, evaluated: () => EvaluationBytes | EvaluationText): void {
  try {
    resolve(evaluated())
  } catch (error) {
    reject(error)
  }
}

function valueIn(outcome: Outcome<EvaluationBytes> | undefined): EvaluationBytes {
  if (!outcome) throw new Error('a batch of evaluations came back short')
  return unwrap(outcome)
}
