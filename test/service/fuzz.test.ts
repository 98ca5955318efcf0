import { Evaluation } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { bodiesAround, recordBodies } from './support/arbitrary-bodies'
import { folder } from './support/command-line'
import { BATCH, batches, CASES, expectOrderly, inBounds, seed, sender } from './support/fuzzing'
import { listen } from './support/listen'
import { settings } from './support/settings'

describe('no body gets a 5xx', () => {
  it(`from /v1/evaluations (${CASES['/v1/evaluations']} cases); what is answered fits the schema of an evaluation`, async () => {
    const send = sender(await listen(createApp()))
    let [cases, evaluated] = [0, 0]
    await fc.assert(
      fc.asyncProperty(batches(recordBodies), fc.boolean(), async (bodies, trace) => {
        const path = `/v1/evaluations${trace ? '?trace=1' : ''}`
        const answers = await inBounds(() => Promise.all(bodies.map((body) => send('POST', path, body))))
        for (const answer of answers) expectOrderly(answer, (json) => Evaluation.safeParse(json).success)
        cases += answers.length
        evaluated += answers.filter(({ status }) => status === 200).length
      }),
      { numRuns: CASES['/v1/evaluations'] / BATCH, seed, endOnFailure: true },
    )
    expect(cases).toBe(CASES['/v1/evaluations'])
    // Else the bodies would only try the first gate.
    expect(evaluated).toBeGreaterThan(cases / 50)
  }, 300_000)

  it(`from /v1/library (${CASES['/v1/library/{kind}/{id}']} cases)`, async () => {
    const send = sender(await listen(createApp({ settings: settings({ library: await folder() }) })))
    const device = () => ({
      format: 'draughtbook/device@1',
      name: 'Fan A',
      serial: '1',
      ranges: [{ label: 'wide', coefficient: 120, exponent: 0.5, minimumPressure_Pa: 25 }],
      calibrations: [{ date: '2026-03-01', due: '2027-03-01' }],
    })
    let cases = 0
    await fc.assert(
      fc.asyncProperty(batches(bodiesAround(device)), async (bodies) => {
        for (const [i, body] of bodies.entries()) {
          const kind = ['devices', 'gauges', 'layouts', 'targets'][i % 8] ?? 'devices'
          const path = `/v1/library/${kind}/entry-${cases}-${i}`
          expectOrderly(await send('PUT', path, body, { 'if-none-match': '*' }), () => true)
        }
        cases += bodies.length
      }),
      { numRuns: CASES['/v1/library/{kind}/{id}'] / BATCH, seed, endOnFailure: true },
    )
    expect(cases).toBe(CASES['/v1/library/{kind}/{id}'])
  }, 300_000)

  it(`from /v1/workbooks (${CASES['/v1/workbooks']} cases); what is answered is a workbook`, async () => {
    const send = sender(await listen(createApp()))
    let cases = 0
    await fc.assert(
      fc.asyncProperty(recordBodies, async (body) => {
        cases++
        const answer = await send('POST', '/v1/workbooks', body)
        if (answer.status === 200) expect(answer.text.slice(0, 2)).toBe('PK')
        else expectOrderly(answer, () => false)
      }),
      { numRuns: CASES['/v1/workbooks'], seed, endOnFailure: true },
    )
    expect(cases).toBe(CASES['/v1/workbooks'])
  }, 300_000)
})
