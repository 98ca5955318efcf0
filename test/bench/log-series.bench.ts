import { openLog, parseLayout, readGrid } from '@draughtbook/shared-calc/log'
import Papa from 'papaparse'
import { compare } from './report.js'

const ROWS = 100_000
/** 10 Hz; a minute at each of 166 levels. */
const LEVEL_ROWS = 600

function seriesText(): string {
  const lines = [
    'House,Bench (invented)',
    'Date,2026-01-01',
    'Volume,300.5,m3',
    'Inside,20,°C',
    'Outside,10,°C',
    'Time (s),Pressure (Pa),Flow (m3/h)',
  ]
  for (let row = 0; row < ROWS; row++) {
    const level = Math.floor(row / LEVEL_ROWS) % 8
    const atRest = row < LEVEL_ROWS || row >= ROWS - LEVEL_ROWS
    const pressure = atRest ? -1 : -70 + 7 * level
    const noise = ((row * 7919) % 101) / 100 - 0.5
    const flow = atRest ? 0 : 60 * Math.abs(pressure) ** 0.65
    lines.push(`${(row / 10).toFixed(1)},${(pressure + noise).toFixed(2)},${flow.toFixed(1)}`)
  }
  return lines.join('\n')
}

const layout = parseLayout({
  format: 'draughtbook/layout@1',
  name: 'series',
  constants: { 'test.method': 'iso-9972:2015' },
  fields: [
    ['building.name', 'House'],
    ['test.date', 'Date'],
    ['building.volume_m3', 'Volume'],
    ['conditions.indoorTemperature_C', 'Inside'],
    ['conditions.outdoorTemperature_C', 'Outside'],
  ].map(([path, label]) => ({ path, at: { label } })),
  series: [
    {
      direction: 'depressurisation',
      time: { at: { header: 'Time' } },
      pressure: { at: { header: 'Pressure' } },
      flow: { at: { header: 'Flow' } },
    },
  ],
})

/** One pass over numbers already parsed: sum, sum of squares, least and most of each column. */
function barePass(columns: readonly Float64Array[]): number {
  let kept = 0
  for (const column of columns) {
    let sum = 0
    let squares = 0
    let least = Number.POSITIVE_INFINITY
    let most = Number.NEGATIVE_INFINITY
    for (const value of column) {
      sum += value
      squares += value * value
      if (value < least) least = value
      if (value > most) most = value
    }
    kept += sum + squares + least + most
  }
  return kept
}

/** A gauge's log of 100,000 rows to readings. */
export async function run(): Promise<void> {
  const text = seriesText()
  const bytes = new TextEncoder().encode(text)
  const grid = openLog(bytes, 'gauge.csv')
  const read = readGrid(grid, { layout })
  if (read.problems.length > 0) throw new Error(JSON.stringify(read.problems))
  const columns = read.tests[0]?.series[0]?.series
  if (!columns) throw new Error('no series was read')
  const peer = {
    name: 'bare pass over the parsed numbers (sums, least, most)',
    run: () => barePass([columns.time_s, columns.pressure_Pa, columns.flow]),
  }
  await compare('A series of 100,000 rows to readings, against a bare pass over its numbers', peer, [
    {
      name: 'cells to record: columns, stations, averages, uncertainties',
      run: () => readGrid(grid, { layout }),
    },
    {
      name: 'stated separately: opening the file (encoding, separator, decimal sign, fields)',
      run: () => openLog(bytes, 'gauge.csv'),
    },
  ])
  await compare(
    'The whole way from bytes to record, against bare splitting of the text',
    {
      name: 'papaparse of the text and Number of every field',
      run: () => Papa.parse<string[]>(text, { delimiter: ',' }).data.map((row) => row.map(Number)),
    },
    [{ name: 'openLog and readGrid', run: () => readGrid(openLog(bytes, 'gauge.csv'), { layout }) }],
  )
}
