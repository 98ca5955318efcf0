import { evaluate, InputError } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { HttpFault } from '../../service/src/http/http-fault'
import { BATCHES, evaluatorOn } from '../../service/src/jobs/evaluator'
import { type Jobs, jobsHere } from '../../service/src/jobs/jobs'
import type { EvaluationOrder } from '../../service/src/jobs/tasks'
import { JsonError } from '../../service/src/json/read-json'
import { demoRecord } from './support/record'
import { testPool } from './support/running'

const bytes = (text: string) => new TextEncoder().encode(text)
const plain = { trace: false, uncertainty: false }
const order = (text = JSON.stringify(demoRecord())) => ({ ...plain, body: bytes(text) })
/** On a busy machine a thread may need long to start; no test here is about that. */
const PATIENCE_s = 600
const wanted = () => true
const expected = JSON.stringify(evaluate(demoRecord()))

/** A thread that only tells what it was given; `work` does the evaluations. */
function told(work: Jobs['run'] = jobsHere.run) {
  const batches: number[] = []
  const jobs: Jobs = {
    ...jobsHere,
    run: (name, input, signal) => {
      batches.push(Array.isArray(input) ? input.length : 0)
      return work(name, input, signal)
    },
  }
  return { jobs, batches }
}

const threads = (workers: number) => testPool({ workers, queue: workers * BATCHES })

describe('evaluations on threads of their own', () => {
  it('give each caller the evaluation of its own record', async () => {
    const { evaluate: evaluateThere } = evaluatorOn(await threads(1), 1, PATIENCE_s)
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
      expect(JSON.parse(json)).toEqual(JSON.parse(JSON.stringify(own)))
      expect(digest).toBe(own.recordDigest)
    }
  })

  it('go together when they come together', async () => {
    const { jobs, batches } = told()
    const { evaluate: evaluateThere } = evaluatorOn(jobs, 1, PATIENCE_s)
    await Promise.all(Array.from({ length: 10 }, () => evaluateThere(order(), wanted)))
    expect(batches.length).toBeLessThan(10)
    expect(batches.reduce((sum, size) => sum + size, 0)).toBe(10)
  })

  it('say what is wrong with one record to its own caller alone', async () => {
    const { evaluate: evaluateThere } = evaluatorOn(await threads(1), 1, PATIENCE_s)
    const [good, malformed, empty, last] = await Promise.allSettled([
      evaluateThere(order(), wanted),
      evaluateThere(order('{'), wanted),
      evaluateThere(order('{}'), wanted),
      evaluateThere(order(), wanted),
    ])
    expect(good).toMatchObject({ status: 'fulfilled', value: { json: expected } })
    expect(last).toMatchObject({ status: 'fulfilled', value: { json: expected } })
    expect(malformed.status === 'rejected' && malformed.reason).toBeInstanceOf(JsonError)
    expect(empty.status === 'rejected' && empty.reason).toBeInstanceOf(InputError)
    expect(empty.status === 'rejected' && empty.reason).not.toBeInstanceOf(JsonError)
  })

  it('are done again one by one where one takes its batch down with it', async () => {
    const { jobs, batches } = told(((
      name: 'evaluations',
      input: readonly EvaluationOrder[],
      signal: AbortSignal,
    ) =>
      input.some(({ body }) => body.length === 4)
        ? Promise.reject(new Error('worker exited with code 1'))
        : jobsHere.run(name, input, signal)) as Jobs['run'])
    const { evaluate: evaluateThere } = evaluatorOn(jobs, 1, PATIENCE_s)
    const [good, bad, last] = await Promise.allSettled([
      evaluateThere(order(), wanted),
      evaluateThere(order('null'), wanted),
      evaluateThere(order(), wanted),
    ])
    expect(good).toMatchObject({ status: 'fulfilled', value: { json: expected } })
    expect(last).toMatchObject({ status: 'fulfilled', value: { json: expected } })
    expect(bad).toMatchObject({ status: 'rejected', reason: { message: 'worker exited with code 1' } })
    expect(batches).toEqual([3, 1, 1, 1])
  })

  it('go on when the thread dies under them', async () => {
    const pool = await threads(1)
    const { evaluate: evaluateThere } = evaluatorOn(pool, 1, PATIENCE_s)
    await evaluateThere(order(), wanted)
    for (let i = 0; i < 3; i++) {
      const running = Promise.all(Array.from({ length: 30 }, () => evaluateThere(order(), wanted)))
      await new Promise((resolve) => setTimeout(resolve, 3))
      await pool.pool.threads[0]?.terminate()
      for (const { json } of await running) expect(json).toBe(expected)
    }
  })

  it('outlive a neighbour that took too long and was ended', async () => {
    const pool = await threads(1)
    const long = demoRecord()
    const readings = Array.from({ length: 900 }, (_, i) => ({
      pressure_Pa: -10 - i / 15,
      flow_m3_h: 40 + i / 10,
    }))
    Object.assign(long.runs[0] ?? {}, { readings })
    const tooLong = new AbortController()
    const ended = pool.run('evaluations', Array(50).fill(order(JSON.stringify(long))), tooLong.signal)
    const other = pool.run('evaluations', [order()], new AbortController().signal)
    setTimeout(() => tooLong.abort(), 100)
    await expect(ended).rejects.toThrow()
    expect(await other).toMatchObject([{ ok: true, value: { json: expected } }])
  })

  it('are left out when their client has gone before their turn', async () => {
    const { jobs, batches } = told()
    const { evaluate: evaluateThere } = evaluatorOn(jobs, 1, PATIENCE_s)
    const [gone, good] = await Promise.allSettled([
      evaluateThere(order(), () => false),
      evaluateThere(order(), wanted),
    ])
    expect(gone).toMatchObject({ status: 'rejected', reason: { status: 499 } })
    expect(good.status).toBe('fulfilled')
    expect(batches).toEqual([1])
  })

  it('are answered with 503 when they take longer than they may', async () => {
    const { jobs, batches } = told(
      ((_name: unknown, _input: unknown, signal: AbortSignal) =>
        new Promise((_resolve, reject) =>
          signal.addEventListener('abort', () => reject(signal.reason)),
        )) as Jobs['run'],
    )
    const { evaluate: evaluateThere } = evaluatorOn(jobs, 1, 0.05)
    const outcomes = await Promise.allSettled([
      evaluateThere(order(), wanted),
      evaluateThere(order(), wanted),
    ])
    for (const outcome of outcomes) {
      expect(outcome).toMatchObject({ status: 'rejected', reason: { status: 503 } })
      expect(outcome.status === 'rejected' && outcome.reason).toBeInstanceOf(HttpFault)
    }
    expect(batches).toEqual([2])
  })
})
