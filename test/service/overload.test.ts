import { request } from 'node:http'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { evaluatorOn } from '../../service/src/jobs/evaluator'
import { heldJobs } from './support/held-jobs'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'
import { testEvaluators } from './support/running'
import { settings } from './support/settings'

const RECORD = JSON.stringify(demoRecord())

describe('more requests at once than can be served soon', () => {
  it('are served up to the bound and turned away beyond it, each with a clear answer', async () => {
    const { jobs, release } = heldJobs()
    const base = await listen(createApp({ jobs, settings: settings({ concurrency: 10 }) }))
    const answered: Response[] = []
    const asked = Array.from({ length: 40 }, async () => {
      const answer = await postJson(`${base}/v1/workbooks`, RECORD)
      answered.push(answer)
      return answer.status
    })
    await expect.poll(() => answered.length, { timeout: 20_000 }).toBe(30)
    expect(answered.every(({ status }) => status === 503)).toBe(true)
    expect(answered[0]?.headers.get('retry-after')).toBe('2')
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
    release()
    const statuses = await Promise.all(asked)
    expect(statuses.filter((status) => status === 200).length).toBe(10)
    expect((await postJson(`${base}/v1/evaluations`, RECORD)).status).toBe(200)
  })

  it('do not keep a health check waiting for all of them', async () => {
    const { evaluate } = evaluatorOn(await testEvaluators(), 1, 600)
    const base = await listen(createApp({ evaluate }))
    let done = 0
    const busy = Array.from({ length: 100 }, async () => {
      const { status } = await postJson(`${base}/v1/evaluations?trace=1`, RECORD)
      done += 1
      return status
    })
    await Promise.any(busy)
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
    expect(done).toBeLessThan(100)
    expect(new Set(await Promise.all(busy))).toEqual(new Set([200]))
  })

  it('are dropped when their client goes before its turn', async () => {
    const base = await listen(createApp())
    const gone = Array.from({ length: 50 }, () => {
      const sent = request(`${base}/v1/evaluations`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
      })
      sent.on('error', () => undefined)
      sent.end(RECORD, () => sent.destroy())
      return sent
    })
    expect((await postJson(`${base}/v1/evaluations`, RECORD)).status).toBe(200)
    expect(gone.every(({ destroyed }) => destroyed)).toBe(true)
  })
})
