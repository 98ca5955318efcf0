import { readFile } from 'node:fs/promises'
import { openLog } from '@draughtbook/shared-calc/log'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { operations } from '../../service/src/api/operations'
import { createApp } from '../../service/src/app'
import { house } from '../site/support/house'
import { planRequest } from '../site/support/plan-request'
import { bodiesAround, recordBodies } from './support/arbitrary-bodies'
import { archiveBodies, BOUNDARY } from './support/archive-bodies'
import { BATCH, batches, CASES, expectOrderly, type Fuzzed, inBounds, seed, sender } from './support/fuzzing'
import { listen } from './support/listen'

const copyOf = (value: unknown) => () => JSON.parse(JSON.stringify(value)) as unknown

const unfinished = {
  method: 'iso-9972:2015',
  building: { volume_m3: 320 },
  conditions: { indoorTemperature_C: 20, outdoorTemperature_C: 5 },
  run: {
    direction: 'depressurisation',
    zeroFlowBefore_Pa: [-1],
    readings: [50, 40, 30].map((pressure) => ({ pressure_Pa: -pressure, flow_m3_h: 3 * pressure })),
  },
}

/** The demonstration log as a spreadsheet program hands its ranges over. */
async function demoRanges() {
  const grid = openLog(new Uint8Array(await readFile('test/demo/demo-log.xlsx')), 'demo-log.xlsx')
  const ranges = grid.sheetNames.map((name) => {
    const sheet = grid.sheet(name)
    const values = Array.from({ length: sheet?.rows ?? 0 }, (_row, row) =>
      Array.from({ length: sheet?.columns ?? 0 }, (_column, column) => sheet?.at(row, column)?.value ?? ''),
    )
    return { sheet: name, address: 'A1', values }
  })
  return { ranges }
}

const ranges = await demoRanges()

describe('no body gets a 5xx from the other doors either', () => {
  it('counts 20,000 bodies or more, to every route that takes one', () => {
    const total = Object.values(CASES).reduce((sum, cases) => sum + cases, 0)
    console.log(`${total} bodies over ${Object.keys(CASES).length} routes`)
    expect(total).toBeGreaterThanOrEqual(20_000)
    expect(Object.keys(CASES).sort()).toEqual(
      operations
        .filter(({ body }) => body !== undefined)
        .map(({ path }) => path)
        .sort(),
    )
  })

  it.each<[Fuzzed, (() => unknown) | undefined]>([
    ['/v1/take-offs', copyOf({ format: 'draughtbook/take-off@1', name: 'x', takeOff: house.takeOff })],
    ['/v1/plans', copyOf(planRequest)],
    ['/v1/running-estimates', copyOf(unfinished)],
    ['/v1/leak-reports', undefined],
    ['/v1/readings', copyOf(ranges)],
  ])(
    '%s',
    async (path, good) => {
      const send = sender(await listen(createApp()))
      let [cases, answered] = [0, 0]
      await fc.assert(
        fc.asyncProperty(batches(good ? bodiesAround(good) : recordBodies), async (bodies) => {
          const answers = await inBounds(() => Promise.all(bodies.map((body) => send('POST', path, body))))
          for (const answer of answers) expectOrderly(answer, (json) => typeof json === 'object')
          cases += answers.length
          answered += answers.filter(({ status }) => status === 200).length
        }),
        { numRuns: CASES[path] / BATCH, seed, endOnFailure: true },
      )
      expect(cases).toBe(CASES[path])
      expect(answered).toBeGreaterThan(0)
    },
    300_000,
  )

  it.each<Fuzzed>(['/v1/registers', '/v1/buildings', '/v1/stages', '/v1/reruns'])(
    '%s',
    async (path) => {
      const send = sender(await listen(createApp()))
      const good = new Uint8Array(await readFile('test/demo/demo-log.xlsx'))
      const headers = { 'content-type': `multipart/form-data; boundary=${BOUNDARY}` }
      let [cases, answered] = [0, 0]
      await fc.assert(
        fc.asyncProperty(archiveBodies(good), async (body) => {
          const answer = await inBounds(() => send('POST', path, body, headers))
          cases++
          if (answer.status !== 200) return expectOrderly(answer, () => false)
          // Lines of progress, and at last the result or what is wrong with the files: never an error of the service itself.
          answered++
          const { problem } = JSON.parse(answer.text.trim().split('\n').at(-1) ?? '')
          expect(problem?.status ?? 200).toBeLessThan(500)
        }),
        { numRuns: CASES[path], seed, endOnFailure: true },
      )
      expect(cases).toBe(CASES[path])
      expect(answered).toBeGreaterThan(cases / 20)
    },
    300_000,
  )
})
