import { parentPort } from 'node:worker_threads'
import { type EvaluationText, evaluation } from './evaluation.js'
import { type Outcome, settleNow } from './outcome.js'

/** Several orders in one message: their bodies in one piece of memory, which is copied at once. */
export interface Batch {
  readonly bytes: Uint8Array
  readonly orders: readonly {
    readonly start: number
    readonly end: number
    readonly trace: boolean
    readonly uncertainty: boolean
  }[]
}

/** Entry of a thread that evaluates: a batch in, an outcome for each of its orders out, in the order in which batches came. */
parentPort?.on('message', ({ bytes, orders }: Batch) => {
  const outcomes: Outcome<EvaluationText>[] = orders.map(({ start, end, trace, uncertainty }) =>
    settleNow(() => evaluation({ body: bytes.subarray(start, end), trace, uncertainty })),
  )
  parentPort?.postMessage(outcomes)
})
