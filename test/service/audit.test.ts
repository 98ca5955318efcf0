import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { jobsHere } from '../../service/src/jobs/jobs'
import { makeLog } from '../../service/src/seen/log'
import { listen, postJson } from './support/listen'
import { demoRecord } from './support/record'

function logged() {
  const lines: string[] = []
  const log = makeLog('info', { write: (line) => void lines.push(line) })
  const audits = () => lines.map((line) => JSON.parse(line)).filter(({ audit }) => audit)
  return { log, lines, audits }
}

/** The line is written after the answer has left. */
const written = (audits: () => unknown[], number: number) =>
  expect.poll(() => audits().length, { timeout: 3000 }).toBe(number)

describe('the audit line', () => {
  it('says who did what to which record, once per call', async () => {
    const { log, audits } = logged()
    const base = await listen(createApp({ log }))
    await postJson(`${base}/v1/evaluations?trace=1`, JSON.stringify(demoRecord()), {
      'x-request-id': 'case-17',
    })
    await postJson(`${base}/v1/workbooks`, '{}')
    await fetch(`${base}/v1/library/devices/fan-a`)
    await written(audits, 3)
    const digest = evaluate(demoRecord()).recordDigest
    expect(audits()[0]).toMatchObject({
      who: 'this machine',
      what: 'POST /v1/evaluations',
      digest,
      status: 200,
      requestId: 'case-17',
    })
    expect(audits()[1]).toMatchObject({ what: 'POST /v1/workbooks', status: 422 })
    expect(audits()[2]).toMatchObject({ what: 'GET other', status: 404 })
  })

  it('holds nothing of the body, the query, the address or the token', async () => {
    const { log, lines, audits } = logged()
    const base = await listen(createApp({ log }))
    const record = demoRecord()
    record.building.name = 'Name-Of-A-House'
    record.building.address = 'Address-Of-A-House'
    record.test.tester = 'Name-Of-A-Person'
    const secret = { authorization: 'Bearer Secret-Token', cookie: 'Secret-Cookie=1' }
    await postJson(`${base}/v1/evaluations`, JSON.stringify(record), secret)
    await postJson(`${base}/v1/evaluations?name=Name-In-Query`, JSON.stringify(record), secret)
    await postJson(`${base}/v1/evaluations`, '{"building":{"name":"Name-In-Fault"}}', secret)
    await fetch(`${base}/Name-In-Path`)
    await written(audits, 4)
    expect(lines.join('')).not.toMatch(/Name-|Address-|Secret-|127\.0\.0\.1/)
  })

  it('takes no request id that could forge a line or a header', async () => {
    const { log, lines, audits } = logged()
    const base = await listen(createApp({ log }))
    const forged = ['a"b', 'x y', 'é', '<script>', 'x'.repeat(65)]
    for (const id of forged) {
      const answer = await fetch(`${base}/healthz`, { headers: { 'x-request-id': encodeURI(id) } })
      expect(answer.headers.get('x-request-id')).toMatch(/^[\w.-]{1,64}$/)
      expect(answer.headers.get('x-request-id')).not.toBe(id)
    }
    await written(audits, forged.length)
    expect(lines.every((line) => line.trim().split('\n').length === 1)).toBe(true)
  })
})

describe('a fault of ours', () => {
  it('is answered with an id to quote and nothing of what it was; the log has the rest', async () => {
    const { log, lines } = logged()
    const broken: typeof jobsHere = {
      ...jobsHere,
      run: () => Promise.reject(new Error('secret detail at /home/somebody/file.ts')),
    }
    const base = await listen(createApp({ log, jobs: broken }))
    const answer = await postJson(`${base}/v1/workbooks`, JSON.stringify(demoRecord()))
    expect(answer.status).toBe(500)
    const text = await answer.text()
    expect(text).not.toMatch(/secret|somebody|\.ts|at /)
    const { instance, title } = JSON.parse(text)
    expect(title).toBe('The service has a bug')
    const id = answer.headers.get('x-request-id')
    expect(instance).toBe(`/requests/${id}`)
    const line = lines.map((one) => JSON.parse(one)).find(({ level }) => level === 50)
    expect(line).toMatchObject({ requestId: id, err: { message: 'secret detail at /home/somebody/file.ts' } })
  })
})

describe('/metrics', () => {
  it('counts by route and outcome in the Prometheus text format, with no label a caller could make up', async () => {
    const base = await listen(createApp())
    await postJson(`${base}/v1/evaluations`, JSON.stringify(demoRecord()))
    await postJson(`${base}/v1/evaluations`, '{}')
    await fetch(`${base}/made-up-by-a-caller`)
    await fetch(`${base}/v1/library/made-up/kind`)
    const metric = (text: string, name: string) => text.split('\n').filter((line) => line.startsWith(name))
    const read = async () => (await fetch(`${base}/metrics`)).text()
    await expect
      .poll(async () => metric(await read(), 'draughtbook_request_duration_seconds_count').join('\n'))
      .toMatch(/route="other",status="404"/)
    const text = await read()
    expect(text).toMatch(/duration_seconds_count\{method="POST",route="\/v1\/evaluations",status="200"\} 1/)
    expect(text).toMatch(/duration_seconds_count\{method="POST",route="\/v1\/evaluations",status="422"\} 1/)
    const { outcome } = evaluate(demoRecord()).verdict
    expect(text).toContain(`draughtbook_evaluations_total{outcome="${outcome}"} 1\n`)
    expect(text).toMatch(/^nodejs_eventloop_lag_seconds /m)
    expect(text).not.toMatch(/made-up/)
    // Every line is a comment or name{labels} value. Source: Prometheus exposition formats, text 0.0.4.
    const line = /^(#.*|[a-zA-Z_:][a-zA-Z0-9_:]*(\{[^}]*\})? [-+0-9.eENanInf]+)?$/
    expect(text.split('\n').filter((one) => !line.test(one))).toEqual([])
  })
})
