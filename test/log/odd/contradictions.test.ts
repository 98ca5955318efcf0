import { interpretLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { book, day, type Rows } from '../support/book'
import {
  closeTo,
  dep,
  FORM,
  HEADINGS,
  HOUSE,
  n50Of,
  type OddRun,
  pres,
  read,
  sheetOfForm,
  zeroRows,
} from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const unsigned = ({ readings, ...run }: OddRun): OddRun => ({
  ...run,
  readings: readings.map(([pressure, flow]): [number, number] => [Math.abs(pressure), flow]),
})

describe('what a log leaves open is asked about', () => {
  it('titles of both directions against the signs of their pressures', async () => {
    const bytes = await sheetOfForm([
      ['Pressurisation'],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
      [null],
      ['Depressurisation'],
      ...zeroRows(pres),
      HEADINGS,
      ...pres.readings,
    ])
    expect(read(bytes).asked).toEqual(['pressure.sign'])
    close(read(bytes, { 'pressure.sign': 'titles exchanged' }).n50, n50Of([dep, pres]))
    const turned = ({ before, after, readings }: OddRun, direction: OddRun['direction']) => ({
      direction,
      before: -before,
      after: -after,
      readings: readings.map(([pressure, flow]): [number, number] => [-pressure, flow]),
    })
    const other = [turned(dep, 'pressurisation'), turned(pres, 'depressurisation')] as unknown as OddRun[]
    close(read(bytes, { 'pressure.sign': 'outside minus inside' }).n50, n50Of(other))
    expect(read(bytes, { 'pressure.sign': 'either' }).asked).toEqual(['pressure.sign'])
  })

  it("last year's readings beside this year's", async () => {
    const old = dep.readings.map(([pressure, flow]) => [pressure, Number((flow * 1.3).toFixed(1))])
    const bytes = await sheetOfForm([
      ...zeroRows(dep),
      [null],
      ['2026', null, null, '2025'],
      [...HEADINGS, null, ...HEADINGS],
      ...dep.readings.map((reading, index) => [...reading, null, ...(old[index] ?? [])]),
    ])
    const { asked, choices } = read(bytes)
    expect(asked).toEqual(['test'])
    expect(choices).toEqual(['2026', '2025'])
    close(read(bytes, { test: '2026' }).n50, n50Of([dep]))
  })

  it('zero flow without a minus where the pressures have lost theirs', async () => {
    const plain = { ...unsigned(dep), before: -dep.before, after: -dep.after } as unknown as OddRun
    const bytes = await sheetOfForm([['Depressurisation'], ...zeroRows(plain), HEADINGS, ...plain.readings])
    expect(read(bytes).asked).toEqual(['zeroFlow.sign'])
    close(read(bytes, { 'zeroFlow.sign': 'as readings' }).n50, n50Of([dep]))
  })
})

describe('what stands elsewhere than usual is read', () => {
  const FORMS: [string, Rows][] = [
    ['behind the values', FORM.map(([label, value]) => [value ?? null, label ?? null])],
    ['below the values', [FORM.map(([, value]) => value ?? null), FORM.map(([label]) => label ?? null)]],
  ]
  it.each(FORMS)('labels %s', async (_, form) => {
    const bytes = await book({ Test: [...form, [null], ...zeroRows(dep), HEADINGS, ...dep.readings] })
    const { n50, asked, record } = read(bytes)
    expect(asked).toEqual([])
    expect(record?.building.name).toBe('Pear Tree Barn')
    expect(record?.conditions.outdoorTemperature_C).toBe(HOUSE.outdoor_C)
    close(n50, n50Of([dep]))
  })

  it('temperatures before and after as their mean, an air pressure by its unit, areas of parts as none', async () => {
    const bytes = await book({
      Test: [
        ['House', 'Pear Tree Barn'],
        ['Date', day('2026-04-22')],
        ['Internal volume (m³)', HOUSE.volume_m3],
        ['', 'Start', 'End'],
        ['Inside temperature (°C)', HOUSE.indoor_C - 0.4, HOUSE.indoor_C + 0.4],
        ['Outside temperature (°C)', HOUSE.outdoor_C + 0.5, HOUSE.outdoor_C - 0.5],
        ['Weather glass', HOUSE.barometer_Pa / 100, 'hPa'],
        ['Ground floor', 66.1, 'm²'],
        ['TFA', 131.2, 'm²'],
        ['Vol. 1 A_E', 402.6, 'm²'],
        ...zeroRows(dep),
        HEADINGS,
        ...dep.readings,
      ],
    })
    const { n50, record } = read(bytes)
    expect(record?.building).toMatchObject({ floorArea_m2: 131.2, envelopeArea_m2: 402.6 })
    close(n50, n50Of([dep]))
  })

  it('both directions behind one column of pressures, below their titles', async () => {
    const shared = dep.readings.map(([pressure], index) => [
      Math.abs(pressure),
      dep.readings[index]?.[1] as number,
      pres.readings[index]?.[1] as number,
    ])
    const { record } = read(
      await sheetOfForm([
        ['', 'Depressurisation', 'Pressurisation'],
        ['Zero flow before (Pa)', dep.before, dep.before],
        ['Zero flow after (Pa)', dep.after, dep.after],
        ['Pressure (Pa)', 'Flow (m³/h)', 'Flow (m³/h)'],
        ...shared,
      ]),
    )
    expect(record?.runs.map(({ direction }) => direction)).toEqual(['depressurisation', 'pressurisation'])
  })

  it('neither the average of both runs as a third, nor a value in silence', async () => {
    const mean = dep.readings.map(([pressure, flow], index) => {
      const [other, flowOther] = pres.readings[index] as [number, number]
      return [(Math.abs(pressure) + other) / 2, (flow + flowOther) / 2]
    })
    const bytes = await sheetOfForm([
      ['Boiler water', 55, '°C'],
      [null],
      ['Depressurisation', null, null, 'Pressurisation', null, null, 'Average'],
      ['Zero before', dep.before, null, 'Zero before', pres.before],
      ['Zero after', dep.after, null, 'Zero after', pres.after],
      [...HEADINGS, null, ...HEADINGS, null, ...HEADINGS],
      ...dep.readings.map((reading, index) => [
        ...reading,
        null,
        ...(pres.readings[index] ?? []),
        null,
        ...(mean[index] ?? []),
      ]),
    ])
    const { tests, findings } = interpretLog({ bytes, fileName: 'log.xlsx' })
    expect(tests.length).toBe(1)
    const said = findings.map(({ message }) => message).join('\n')
    expect(said).toContain('their flows are the mean of two other runs')
    expect(said).toContain('These values were not used: "Boiler water"')
    close(read(bytes).n50, n50Of([dep, pres]))
  })
})
