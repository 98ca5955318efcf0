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

/** The outcomes of a batch: their answers in one piece of memory, which is handed over without a copy. */
export interface Outcomes {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly outcomes: readonly Outcome<Answered>[]
}

/** An evaluation whose answer stands in the bytes of its batch. */
export interface Answered extends Omit<EvaluationText, 'json'> {
  readonly start: number
  readonly end: number
}

/** Entry of a thread that evaluates: a batch in, an outcome for each of its orders out, in the order in which batches came. */
parentPort?.on('message', ({ bytes, orders }: Batch) => {
  const packed = inOnePiece(
    orders.map(({ start, end, trace, uncertainty }) =>
      settleNow(() => evaluation({ body: bytes.subarray(start, end), trace, uncertainty })),
    ),
  )
  parentPort?.postMessage(packed, [packed.bytes.buffer])
})

function inOnePiece(texts: readonly Outcome<EvaluationText>[]): Outcomes {
  let length = 0
  const outcomes = texts.map((one): Outcome<Answered> => {
    if (!one.ok) return one
    const { json, digest, outcome } = one.value
    const start = length
    length += Buffer.byteLength(json)
    return { ok: true, value: { start, end: length, digest, outcome } }
  })
  const bytes = Buffer.from(new ArrayBuffer(length))
  for (const [i, one] of outcomes.entries()) {
    const text = texts[i]
    if (one.ok && text?.ok) bytes.write(text.value.json, one.value.start)
  }
  return { bytes, outcomes }
}
