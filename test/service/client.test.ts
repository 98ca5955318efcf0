import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { ServiceClient } from '../../addin/src/service/service-client'
import { ServiceProblem } from '../../addin/src/service/service-problem'
import { createApp } from '../../service/src/app'
import { folder } from './support/command-line'
import { listen } from './support/listen'
import { demoRecord } from './support/record'
import { settings } from './support/settings'

async function client() {
  const base = await listen(createApp({ settings: settings({ library: await folder() }) }))
  return new ServiceClient(new URL(`${base}/`))
}

/** What a call rejects with. */
const fault = (call: Promise<unknown>): Promise<ServiceProblem> =>
  call.then(
    () => Promise.reject(new Error('was not refused')),
    (error: unknown) => error as ServiceProblem,
  )

describe('the typed client against the service', () => {
  it('evaluates, writes the workbook and lists', async () => {
    const service = await client()
    const record = demoRecord()
    expect(await service.evaluate(record)).toEqual(JSON.parse(JSON.stringify(evaluate(record))))
    expect((await service.evaluate(record, { trace: true })).trace?.length).toBeGreaterThan(50)
    expect([...(await service.workbook(record)).subarray(0, 2)]).toEqual([0x50, 0x4b])
    expect((await service.targets()).map(({ id }) => id)).toContain('passive-house-new')
    expect((await service.formulas()).length).toBeGreaterThan(30)
  })

  it('turns a refusal into a problem with its fields', async () => {
    const service = await client()
    const record = demoRecord()
    record.building.volume_m3 = -1
    const problem = await fault(service.evaluate(record))
    expect(problem).toBeInstanceOf(ServiceProblem)
    expect([problem.status, problem.problems[0]?.path]).toEqual([422, 'building.volume_m3'])
  })

  it('keeps the firm’s library, and says when someone else was first', async () => {
    const service = await client()
    const gauge = { format: 'draughtbook/gauge@1' as const, name: 'Gauge 1', serial: 'invented 1' }
    const first = await service.save('gauges', 'gauge-1', gauge, undefined)
    const second = await service.save('gauges', 'gauge-1', { ...gauge, notes: 'n' }, first)
    expect((await fault(service.save('gauges', 'gauge-1', gauge, first))).status).toBe(412)
    expect(await service.library('gauges')).toEqual([
      { id: 'gauge-1', version: second, value: { ...gauge, notes: 'n' } },
    ])
    await service.remove('gauges', 'gauge-1', second)
    expect(await service.library('gauges')).toEqual([])
  })

  it('gives the status of an answer that is not the service’s own', async () => {
    const proxy = async () =>
      new Response('<h1>Bad gateway</h1>', { status: 502, headers: { 'retry-after': '7' } })
    const service = new ServiceClient(new URL('http://localhost/'), { fetch: proxy })
    expect(await fault(service.targets())).toMatchObject({
      status: 502,
      message: 'the service answered 502',
      retryAfter_s: 7,
    })
  })
})
