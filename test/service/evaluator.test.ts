import { evaluate, InputError } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { HttpFault } from '../../service/src/http/http-fault'
import { type EvaluationOrder, evaluation } from '../../service/src/jobs/evaluation'
import { evaluatorOn } from '../../service/src/jobs/evaluator'
import type { Batches } from '../../service/src/jobs/evaluator-threads'
import { TooLong } from '../../service/src/jobs/in-thread'
import { settleNow } from '../../service/src/jobs/outcome'
import { JsonError } from '../../service/src/json/read-json'
import { demoRecord } from './support/record'
import { testEvaluators } from './support/running'

const bytes = (text: string) => new TextEncoder().encode(text)
const text = (json: Uint8Array | string) => (typeof json === 'string' ? json : new TextDecoder().decode(json))
const plain = { trace: false, uncertainty: false }
const order = (text = JSON.stringify(demoRecord())) => ({ ...plain, body: bytes(text) })
/** On a busy machine a thread may need long to start; no test here is about that. */
const PATIENCE_s = 600
const wanted = () => true
const expected = JSON.stringify(evaluate(demoRecord()))
const asExpected = expect.toSatisfy((json: Uint8Array | string) => text(json) === expected)

const inBytes = (one: EvaluationOrder) => {
  const { json, ...entries } = evaluation(one)
  return { json: bytes(json), ...entries }
}

/** Evaluates here, as a thread would. */
const here: Batches['run'] = async (orders) => orders.map((one) => settleNow(() => inBytes(one)))

/** A thread that only tells what it was given; `work` does the evaluations. */
function told(work: Batches['run'] = here) {
  const sizes: number[] = []
  const batches: Batches = {
    run: (orders, deadline_ms) => {
      sizes.push(orders.length)
      return work(orders, deadline_ms)
    },
  }
  return { batches, sizes }
}

describe('evaluations on threads of their own', () => {
  it('give each caller the evaluation of its own record', async () => {
    const { evaluate: evaluateThere } = evaluatorOn(await testEvaluators(), 1, PATIENCE_s)
    const volumes = Array.from({ length: 40 }, (_, i) => 200 + i)
    const texts = await Promise.all(
      volumes.map((volume_m3) => {
        const record = demoRecord()
        record.building.volume_m3 = volume_m3
        return evaluateThere(order(JSON.stringify(record)), wanted)
      }),
    )
    for (const [i, { json, digest }] of texts.entries()) {
      const record = demoRecord()
      record.building.volume_m3 = volumes[i] ?? 0
      const own = evaluate(record)
      expect(JSON.parse(text(json))).toEqual(JSON.parse(JSON.stringify(own)))
      expect(digest).toBe(own.recordDigest)
    }
  })

  it('go together when they come together', async () => {
    const { batches, sizes } = told()
    const { evaluate: evaluateThere } = evaluatorOn(batches, 1, PATIENCE_s)
    await Promise.all(Array.from({ length: 10 }, () => evaluateThere(order(), wanted)))
    expect(sizes.length).toBeLessThan(10)
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(10)
  })

  it('say what is wrong with one record to its own caller alone', async () => {
    const { evaluate: evaluateThere } = evaluatorOn(await testEvaluators(), 1, PATIENCE_s)
    const [good, malformed, empty, last] = await Promise.allSettled([
      evaluateThere(order(), wanted),
      evaluateThere(order('{'), wanted),
      evaluateThere(order('{}'), wanted),
      evaluateThere(order(), wanted),
    ])
    expect(good).toMatchObject({ status: 'fulfilled', value: { json: asExpected } })
    expect(last).toMatchObject({ status: 'fulfilled', value: { json: asExpected } })
    expect(malformed.status === 'rejected' && malformed.reason).toBeInstanceOf(JsonError)
    expect(empty.status === 'rejected' && empty.reason).toBeInstanceOf(InputError)
    expect(empty.status === 'rejected' && empty.reason).not.toBeInstanceOf(JsonError)
  })

  it('are done again one by one where one takes its batch down with it', async () => {
    const { batches, sizes } = told(async (orders) => {
      if (orders.some(({ body }) => body.length === 4)) throw new Error('the thread has ended')
      return here(orders, 0)
    })
    const { evaluate: evaluateThere } = evaluatorOn(batches, 1, PATIENCE_s)
    const [good, bad, last] = await Promise.allSettled([
      evaluateThere(order(), wanted),
      evaluateThere(order('null'), wanted),
      evaluateThere(order(), wanted),
    ])
    expect(good).toMatchObject({ status: 'fulfilled', value: { json: asExpected } })
    expect(last).toMatchObject({ status: 'fulfilled', value: { json: asExpected } })
    expect(bad).toMatchObject({ status: 'rejected', reason: { message: 'the thread has ended' } })
    expect(sizes).toEqual([3, 1, 1, 1])
  })

  it('go on when the thread dies under them', async () => {
    const threads = await testEvaluators()
    const { evaluate: evaluateThere } = evaluatorOn(threads, 1, PATIENCE_s)
    await evaluateThere(order(), wanted)
    for (let i = 0; i < 3; i++) {
      const running = Promise.all(Array.from({ length: 30 }, () => evaluateThere(order(), wanted)))
      await new Promise((resolve) => setTimeout(resolve, 3))
      await threads.workers[0]?.terminate()
      for (const { json } of await running) expect(text(json)).toBe(expected)
    }
  })

  it('outlive a neighbour that took too long and was ended', async () => {
    const threads = await testEvaluators()
    const long = demoRecord()
    const readings = Array.from({ length: 900 }, (_, i) => ({
      pressure_Pa: -10 - i / 15,
      flow_m3_h: 40 + i / 10,
    }))
    Object.assign(long.runs[0] ?? {}, { readings })
    await threads.run([order()], PATIENCE_s * 1000)
    const ended = threads.run(Array(50).fill(order(JSON.stringify(long))), 1)
    const other = threads.run([order()], PATIENCE_s * 1000)
    await expect(ended).rejects.toBeInstanceOf(TooLong)
    expect(await other).toMatchObject([{ ok: true, value: { json: asExpected } }])
  })

  it('are left out when their client has gone before their turn', async () => {
    const { batches, sizes } = told()
    const { evaluate: evaluateThere } = evaluatorOn(batches, 1, PATIENCE_s)
    const [gone, good] = await Promise.allSettled([
      evaluateThere(order(), () => false),
      evaluateThere(order(), wanted),
    ])
    expect(gone).toMatchObject({ status: 'rejected', reason: { status: 499 } })
    expect(good.status).toBe('fulfilled')
    expect(sizes).toEqual([1])
  })

  it('are answered with 503 when they take longer than they may', async () => {
    const { batches, sizes } = told((_orders, deadline_ms) =>
      Promise.reject(new TooLong(`${deadline_ms} ms`)),
    )
    const { evaluate: evaluateThere } = evaluatorOn(batches, 1, 0.05)
    const outcomes = await Promise.allSettled([
      evaluateThere(order(), wanted),
      evaluateThere(order(), wanted),
    ])
    for (const outcome of outcomes) {
      expect(outcome).toMatchObject({ status: 'rejected', reason: { status: 503 } })
      expect(outcome.status === 'rejected' && outcome.reason).toBeInstanceOf(HttpFault)
    }
    expect(sizes).toEqual([2])
  })

  it('have a second thread where the first has something to do', async () => {
    const threads = await testEvaluators(2)
    const outcomes = await Promise.all([1, 2, 3].map(() => threads.run([order()], PATIENCE_s * 1000)))
    for (const outcome of outcomes) expect(outcome).toMatchObject([{ ok: true, value: { json: asExpected } }])
    expect(threads.workers.length).toBe(2)
  })

  it('are rejected, not left hanging, when the threads are ended', async () => {
    const threads = await testEvaluators()
    const waiting = [1, 2].map(() => threads.run([order()], PATIENCE_s * 1000))
    const settled = Promise.allSettled(waiting)
    await threads.destroy()
    for (const outcome of await settled) expect(outcome.status).toBe('rejected')
  })
})
