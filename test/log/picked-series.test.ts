import { openLog, parseLayout, readLog, readPickedSeries } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { seriesSheet } from './logs/series-sheet'
import { seriesText } from './logs/series-text'

/** Only one sheet of a log, as the pane hands over what is selected. */
async function sheetOf({ write, fileName }: typeof seriesSheet, name: string) {
  const grid = openLog(await write(), fileName)
  return { ...grid, sheetNames: [name] }
}

describe('a series picked by hand', () => {
  it('comes to the same readings as by a layout: both directions, device pressures, clock times', async () => {
    const picked = readPickedSeries(await sheetOf(seriesSheet, 'Gauge'), {
      columns: { time: 'A', pressure: 'B', devicePressure: 'C' },
      range: { value: 'ring 1' },
    })
    const [test] = readLog(await seriesSheet.write(), seriesSheet.fileName, {
      layout: parseLayout(seriesSheet.layout),
    }).tests
    expect(picked.problems).toEqual([])
    expect(picked.runs.map(({ run }) => [run.direction, run.readings])).toEqual(
      test?.record?.runs.map(({ direction, readings }) => [direction, readings]),
    )
    expect(picked.runs[1]?.cells['readings[0].pressure_Pa']).toBe(
      test?.cells['runs[1].readings[0].pressure_Pa'],
    )
    for (const { run } of picked.runs) {
      expect(run.zeroFlowBefore_Pa?.length).toBeGreaterThan(25)
      expect(run.zeroFlowAfter_Pa?.length).toBeGreaterThan(25)
    }
  })

  it('says the same of the stations as by a layout, places counted from the run', async () => {
    const picked = readPickedSeries(await sheetOf(seriesText, 'gauge 0007'), {})
    const [test] = readLog(await seriesText.write(), seriesText.fileName, {
      layout: parseLayout(seriesText.layout),
    }).tests
    const ofSeries = (test?.findings ?? []).filter(({ rule }) => rule.startsWith('log-series'))
    const told = (picked.runs[0]?.findings ?? []).filter(({ rule }) => rule.startsWith('log-series'))
    expect(told.map(({ message, cells }) => [message, cells])).toEqual(
      ofSeries.map(({ message, cells }) => [message, cells]),
    )
    expect(told.flatMap(({ where }) => where)).toEqual(
      ofSeries.flatMap(({ where }) => where.map((path) => path.replace(/^runs\[0\]\.?/, '')).filter(Boolean)),
    )
  })

  it('is drawn, but gives no run, where no station holds for the averaging time', async () => {
    const picked = readPickedSeries(await sheetOf(seriesText, 'gauge 0007'), { averagingTime_s: 45 })
    expect(picked.problems).toMatchObject([
      { code: 'series-unusable', message: expect.stringContaining('averaging time of 45 s') },
    ])
    expect(picked.runs).toEqual([])
    expect(picked.reading?.stations.some(({ rejected }) => rejected === 'short')).toBe(true)
  })

  it('takes columns by their letters, with the units their headings name', async () => {
    const rows = Array.from({ length: 240 }, (_, row) => `${row},${row < 60 ? 0 : -0.2},${row < 60 ? 0 : 25}`)
    const text = [
      'A,B,C',
      'min,inH2O,L/s',
      ...rows.map((row) => row.replace(/^\d+/, (s) => `${Number(s) / 60}`)),
    ]
    const grid = openLog(new TextEncoder().encode(text.join('\n')), 'log.csv')
    const { runs } = readPickedSeries(grid, { columns: { time: 'a', pressure: 'b', flow: 'c' } })
    // 1 inch of water (4 °C) is 249.089 Pa, NIST SP 811 table B.8 (value from memory); 1 L/s is 3.6 m³/h.
    expect(runs[0]?.run.readings).toMatchObject([
      { pressure_Pa: expect.closeTo(-0.2 * 249.089, 2), flow_m3_h: expect.closeTo(90, 9) },
    ])
    for (const columns of [
      { time: 'A', pressure: 'B' },
      { time: '1', pressure: 'B', flow: 'C' },
    ])
      expect(() => readPickedSeries(grid, { columns })).toThrow(/^name /)
  })

  it('turns pressures logged the other way round', async () => {
    const grid = await sheetOf(seriesText, 'gauge 0007')
    const [plain] = readPickedSeries(grid, {}).runs
    const [turned] = readPickedSeries(grid, {
      sign: 'outside minus inside',
      direction: 'pressurisation',
    }).runs
    expect(turned?.run.readings.map(({ pressure_Pa }) => -pressure_Pa)).toEqual(
      plain?.run.readings.map(({ pressure_Pa }) => pressure_Pa),
    )
    expect(turned?.findings.map(({ rule }) => rule)).toContain('log-sign')
  })

  it.each([
    ['a table of readings', 'Pressure (Pa),Flow (m3/h)\n-50,700\n-40,610\n-30,500', 'series-unusable'],
    [
      'two series side by side',
      `Time (s),Pressure (Pa),Flow (m3/h),,Time (s),Pressure (Pa),Flow (m3/h)\n${Array.from({ length: 300 }, (_, row) => `${row},-50,700,,${row},40,600`).join('\n')}`,
      'ambiguous',
    ],
  ])('refuses %s', (_, text, code) => {
    const grid = openLog(new TextEncoder().encode(text), 'log.csv')
    expect(() => readPickedSeries(grid, {})).toThrow(
      expect.objectContaining({ problems: [expect.objectContaining({ code })] }),
    )
  })
})
