import {
  makePlan,
  measureTakeOff,
  methodById,
  RECORD_FORMAT,
  reportLeaks,
  type TakeOff,
  whileReading,
} from '@draughtbook/shared-calc'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app.js'
import { listen, postJson } from '../service/support/listen.js'
import { house } from './support/house.js'
import { planRequest } from './support/plan-request.js'

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'
const takeOffRequest = { format: 'draughtbook/take-off@1', name: 'Invented house', takeOff: house.takeOff }
const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value))
const post = async (path: string, body: unknown, accept?: string) =>
  postJson((await listen(createApp())) + path, JSON.stringify(body), accept ? { accept } : {})
const sheetsOf = async (answer: Response) => {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(await answer.arrayBuffer())
  return workbook.worksheets.map(({ name }) => name)
}

describe('before the test', () => {
  it('POST /v1/take-offs answers both volumes, or a workbook where that is accepted', async () => {
    expect(await (await post('/v1/take-offs', takeOffRequest)).json()).toEqual(
      json(measureTakeOff(house.takeOff as TakeOff)),
    )
    const file = await post('/v1/take-offs', takeOffRequest, XLSX)
    expect(file.headers.get('content-type')).toBe(XLSX)
    expect(await sheetsOf(file)).toEqual(['Volume', 'Inputs', 'Working'])
  })

  it('POST /v1/plans answers the plan, or the plan as a sheet for the site', async () => {
    expect(await (await post('/v1/plans', planRequest)).json()).toEqual(json(makePlan(planRequest)))
    expect((await sheetsOf(await post('/v1/plans', planRequest, XLSX))).slice(0, 2)).toEqual([
      'Plan',
      'Checklist',
    ])
  })

  it('a fault is 422 and names its field', async () => {
    const answer = await post('/v1/plans', { ...planRequest, building: { name: 'x' } })
    expect(answer.status).toBe(422)
    expect(await answer.json()).toMatchObject({ errors: [{ path: 'building.volume_m3' }] })
    const without = await post('/v1/take-offs', { ...takeOffRequest, takeOff: { spaces: [] } })
    expect(await without.json()).toMatchObject({ errors: [{ path: 'takeOff.spaces' }] })
  })

  it('what can be answered neither as JSON nor as a workbook is 406', async () => {
    expect((await post('/v1/plans', planRequest, 'text/html')).status).toBe(406)
  })
})

describe('the preparation list', () => {
  it('GET /v1/preparation gives what each method asks, and the cautions with who decides', async () => {
    const answer = await fetch(`${await listen(createApp())}/v1/preparation`)
    const { preparation } = (await answer.json()) as {
      preparation: { openings: unknown[]; cautions: unknown[]; decides: string }
    }
    expect(preparation.openings).toHaveLength(12)
    expect(preparation.cautions).toHaveLength(7)
    expect(preparation.decides).toContain('Local codes and licensed practice decide')
  })
})

describe('on site', () => {
  const unfinished = {
    method: 'iso-9972:2015',
    building: { volume_m3: 320 },
    conditions: {},
    run: { direction: 'depressurisation' as const, readings: [{ pressure_Pa: -66, flow_m3_h: 240 }] },
  }

  it('POST /v1/running-estimates answers after the first reading', async () => {
    const { method, ...rest } = unfinished
    expect(await (await post('/v1/running-estimates', unfinished)).json()).toEqual(
      json(whileReading(rest, methodById(method))),
    )
  })

  it('a reading without a flow is 422 and named', async () => {
    const run = { direction: 'depressurisation', readings: [{ pressure_Pa: -66 }] }
    const answer = await post('/v1/running-estimates', { ...unfinished, run })
    expect(answer.status).toBe(422)
    expect(await answer.json()).toMatchObject({ errors: [{ path: 'run.readings[0].flow_m3_h' }] })
  })

  it('POST /v1/leak-reports answers what is left to seal, for a record without a log too', async () => {
    expect(await (await post('/v1/leak-reports', house)).json()).toEqual(json(reportLeaks(house)))
    const { leaks: _l, plan: _p, preparation: _r, takeOff: _t, test, ...rest } = house
    const { openings: _o, ...details } = test
    const old = { ...rest, test: details, format: RECORD_FORMAT }
    expect(await (await post('/v1/leak-reports', old)).json()).toMatchObject({ leaks: [], rounds: [] })
  })
})
