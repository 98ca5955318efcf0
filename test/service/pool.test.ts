import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it, onTestFinished, vi } from 'vitest'
import { createApp } from '../../service/src/app'
import type { Batches } from '../../service/src/jobs/evaluator-threads'
import { jobsHere } from '../../service/src/jobs/jobs'
import { warmUp } from '../../service/src/running/warm-up'
import { folder } from './support/command-line'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'
import { testPool } from './support/running'
import { settings } from './support/settings'

const RECORD = JSON.stringify(demoRecord())
const never = new AbortController().signal
const body = () => new TextEncoder().encode(RECORD)

describe('the worker pool', () => {
  it('writes workbooks that start like one', async () => {
    const pool = await testPool()
    const { bytes, name } = await pool.run('workbook', { body: body() }, never)
    expect(Buffer.from(bytes.subarray(0, 4)).toString('latin1')).toBe('PK\x03\x04')
    expect(name).toBe('Plot 7 2026-10-14')
  })

  it('is warmed up however long that takes: on a busy machine the first piece of work may take minutes', async () => {
    const pool = await testPool({ deadline_ms: 1 })
    await expect(pool.run('workbook', { body: body() }, never)).rejects.toThrow(/takes longer/)
    const waitsFor = new Set<string>()
    const deadlines: number[] = []
    const evaluators: Batches = {
      run: async (_orders, deadline_ms) => {
        deadlines.push(deadline_ms)
        return []
      },
    }
    await warmUp({ jobs: pool, evaluators }, waitsFor)
    expect([...waitsFor]).toEqual([])
    expect(deadlines).toEqual([Number.POSITIVE_INFINITY])
  })

  it('hands faults of the input over as what they are', async () => {
    const base = await listen(createApp({ jobs: await testPool() }))
    expect((await postJson(`${base}/v1/workbooks`, '{')).status).toBe(400)
    expect((await postJson(`${base}/v1/workbooks`, '{}')).status).toBe(422)
  })

  it('does a task again when its worker dies, and goes on', async () => {
    const pool = await testPool()
    await pool.run('workbook', { body: body() }, never)
    for (let i = 0; i < 2; i++) {
      const running = pool.run('workbook', { body: body() }, never)
      await new Promise((resolve) => setTimeout(resolve, 20))
      await pool.pool.threads[0]?.terminate()
      expect((await running).bytes.length).toBeGreaterThan(10_000)
    }
  })

  it('turns away with 503 what does not fit the queue, and serves again afterwards', async () => {
    const begin = join(await folder(), 'begin')
    vi.stubEnv('HELD_UNTIL', begin)
    onTestFinished(() => void vi.unstubAllEnvs())
    const file = fileURLToPath(new URL('./support/held-worker.mjs', import.meta.url))
    const pool = await testPool({ workers: 1, queue: 2, file })
    const base = await listen(createApp({ jobs: pool }))
    const refused: Response[] = []
    const asked = Array.from({ length: 12 }, async () => {
      const answer = await postJson(`${base}/v1/workbooks`, RECORD)
      if (answer.status === 503) refused.push(answer)
      return answer.status
    })
    // One is in work, two wait.
    await expect.poll(() => refused.length, { timeout: 60_000 }).toBe(9)
    expect(refused[0]?.headers.get('retry-after')).toBe('2')
    expect(await refused[0]?.json()).toMatchObject({ type: '/api#busy', title: 'The service is busy' })
    await writeFile(begin, '')
    expect((await Promise.all(asked)).filter((status) => status === 200).length).toBe(3)
    expect((await postJson(`${base}/v1/workbooks`, RECORD)).status).toBe(200)
  })

  it('lets go of the port that each task brings along: that takes a turn of the thread’s event loop', async () => {
    const file = fileURLToPath(new URL('./support/turns-worker.mjs', import.meta.url))
    const pool = await testPool({ file })
    const turnsSoFar = () => pool.run('workbook', { body: body() }, never)
    // A thread that only sleeps between its tasks never takes one.
    await expect.poll(turnsSoFar, { timeout: 30_000 }).toBeGreaterThan(2)
  })

  it('ends a task whose client has gone', async () => {
    const pool = await testPool()
    const base = await listen(createApp({ jobs: pool }))
    await postJson(`${base}/v1/workbooks`, RECORD)
    const gone = new AbortController()
    const asked = Array.from({ length: 4 }, () =>
      fetch(`${base}/v1/workbooks`, {
        method: 'POST',
        body: RECORD,
        headers: { 'content-type': 'application/json' },
        signal: gone.signal,
      }).catch(() => undefined),
    )
    await expect.poll(() => pool.waiting).toBeGreaterThan(0)
    gone.abort()
    await Promise.all(asked)
    await expect.poll(() => pool.waiting).toBe(0)
    expect((await postJson(`${base}/v1/workbooks`, RECORD)).status).toBe(200)
  })

  it('answers 503 when a request takes longer than it may', async () => {
    const slow = {
      run: (_name: unknown, _input: unknown, signal: AbortSignal) =>
        new Promise<never>((_resolve, reject) =>
          signal.addEventListener('abort', () => reject(signal.reason)),
        ),
      close: async () => undefined,
    }
    const base = await listen(createApp({ jobs: slow, settings: settings({ timeout_s: 1 }) }))
    const answer = await postJson(`${base}/v1/workbooks`, RECORD)
    expect(answer.status).toBe(503)
    expect(await answer.json()).toMatchObject({ title: 'The request took too long' })
  })

  it('refuses what would need more memory than a worker has, and lives on', async () => {
    // Clearing memory away before it runs out takes long on a busy machine.
    const pool = await testPool({ memory_MB: 24, deadline_ms: 600_000 })
    const base = await listen(createApp({ jobs: pool, settings: settings({ timeout_s: 600 }) }))
    const answer = await postJson(`${base}/v1/workbooks`, RECORD)
    expect(answer.status).toBe(422)
    expect(await answer.json()).toMatchObject({ title: expect.stringMatching(/needs more memory/) })
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
  })

  it('takes large bodies, good or bad, so that the event loop does not', async () => {
    const ran: string[] = []
    const jobs: typeof jobsHere = {
      ...jobsHere,
      run: (name, input, signal) => {
        ran.push(name)
        return jobsHere.run(name, input, signal)
      },
    }
    const base = await listen(createApp({ jobs }))
    const many = Array.from({ length: 900 }, (_, i) => ({
      pressure_Pa: -10 - i / 15,
      flow_m3_h: 40 + i / 10,
    }))
    const large = demoRecord()
    Object.assign(large.runs[0] ?? {}, { readings: many })
    const answer = await postJson(`${base}/v1/evaluations?trace=1`, JSON.stringify(large))
    expect(answer.status).toBe(200)
    expect(await answer.json()).toEqual(JSON.parse(JSON.stringify(evaluate(large, { trace: true }))))
    Object.assign(large.runs[0] ?? {}, {
      readings: many.map(() => ({ pressure_Pa: 'none', flow_m3_h: 'none' })),
    })
    const junk = JSON.stringify(large)
    const refused = await postJson(`${base}/v1/evaluations`, junk)
    expect(refused.status).toBe(422)
    const { errors } = (await refused.json()) as { errors: { message: string }[] }
    expect(errors.length).toBe(101)
    expect(errors.at(-1)?.message).toMatch(/^and \d+ more errors$/)
    await postJson(`${base}/v1/evaluations`, RECORD)
    expect(ran).toEqual(['evaluation', 'evaluation'])
  })
})
