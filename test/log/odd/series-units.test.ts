import { readFileSync } from 'node:fs'
import { interpretLog } from '@draughtbook/shared-calc/log'
import { expect, it } from 'vitest'
import { read } from './house'

// The raw series among the sample logs, whose heads state every unit, with units taken away.
const lines = readFileSync(new URL('../samples/20-raw-series.csv', import.meta.url), 'utf8').split('\n')
const logOf = (heads: string, scale = 1) =>
  new TextEncoder().encode(
    [
      heads,
      ...lines.slice(1).map((line) => {
        const [time, pressure, ...rest] = line.split(',')
        return pressure === undefined ? line : [time, Number(pressure) * scale, ...rest].join(',')
      }),
    ].join('\n'),
  )
const answers = {
  volume: '400 m3',
  'indoor temperature': '20',
  'outdoor temperature': '8',
  date: '2026-01-15',
}
const readSeries = (bytes: Uint8Array, more = {}) => read(bytes, { ...answers, ...more }, 'series.csv')

it('says that pressures and times of a series without units were taken in Pa and seconds, with their cells', () => {
  const stated = readSeries(logOf('time_s,building_pa,flow_m3h'))
  expect(stated.said.join('\n')).not.toMatch(/can only be in Pa|Seconds are assumed/)
  const bytes = logOf('time,building pressure,flow_m3h')
  const { tests } = interpretLog({ bytes, fileName: 'series.csv' }, { answers })
  const said = tests[0]?.findings.map(({ message, cells }) => `${message} ${cells?.join()}`).join('\n')
  expect(said).toMatch(/Seconds are assumed\. .*A2/)
  expect(said).toMatch(/Pa.*B2/)
  expect(readSeries(bytes).n50).toBeCloseTo(stated.n50 ?? Number.NaN, 12)
})

it('asks for the unit of pressures whose size leaves it open', () => {
  const bytes = logOf('time_s,building pressure,flow_m3h', 0.01)
  expect(readSeries(bytes).asked).toEqual(['pressure.unit'])
  const truth = readSeries(logOf('time_s,building_pa,flow_m3h'))
  expect(readSeries(bytes, { 'pressure.unit': 'mbar' }).n50).toBeCloseTo(truth.n50 ?? Number.NaN, 6)
})
