import { book, day } from '../support/book'
import { levelRows } from '../support/level-rows'
import type { MadeUpLog } from '../support/made-up-log'

const rest = (pressure_Pa: number) => ({ pressure_Pa, device: 0.2, hold_s: 40, mark: 'zero' })
const fan = (pressure_Pa: number, device: number) => ({ pressure_Pa, device, hold_s: 30, mark: 'fan' })
const reading = (pressure_Pa: number, devicePressure_Pa: number) => ({
  pressure_Pa,
  devicePressure_Pa,
  // 80 samples that alternate by 0.5 Pa: s²/n with s² = 80 · 0.5²/79. The device, always the same, tells nothing.
  pressureUncertainty_Pa: 0.5 / Math.sqrt(79),
  range: 'ring 1',
})

const levels = [
  rest(-0.8),
  fan(-58, 201),
  fan(-42, 124),
  fan(-27, 64),
  rest(-0.6),
  fan(57, 198),
  fan(41, 121),
  fan(26, 61),
  rest(-0.4),
]

/** Clock times as a spreadsheet keeps them: parts of a day from 9:00. */
const clock = (seconds: number) => (9 * 3600 + seconds) / 86_400

export const seriesSheet: MadeUpLog = {
  name: 'series sheet',
  imitates:
    'a workbook with a gauge’s log at 4 Hz pasted into a sheet: clock times, device pressure, marked blocks, both directions in one go',
  fileName: 'pasted.xlsx',
  write: () =>
    book(
      {
        House: [
          ['Name', 'Studio 3 (invented)'],
          ['Day', day('2026-08-19')],
          ['V', 96.4, 'm³'],
          ['Ti', 24, '°C'],
          ['Te', 22, '°C'],
        ],
        Gauge: [
          ['Clock', 'Building (Pa)', 'Device (Pa)', 'Block'],
          ...levelRows(levels, 4, 0.5).map(([time, ...rest]) => [clock(time), ...rest]),
        ],
      },
      (workbook) => {
        const column = workbook.getWorksheet('Gauge')?.getColumn(1)
        if (column) column.numFmt = 'hh:mm:ss.0'
      },
    ),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'series sheet',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'Name' } },
      { path: 'test.date', at: { label: 'Day' } },
      { path: 'building.volume_m3', at: { label: 'V' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Ti' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Te' } },
    ],
    series: [
      {
        direction: 'by sign',
        time: { at: { header: 'Clock', sheet: 'Gauge' } },
        pressure: { at: { header: 'Building', sheet: 'Gauge' } },
        devicePressure: { at: { header: 'Device', sheet: 'Gauge' } },
        range: { value: 'ring 1' },
        marks: { column: { header: 'Block', sheet: 'Gauge' }, words: { zero: 'zero-flow', fan: 'reading' } },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@2',
      building: { name: 'Studio 3 (invented)', volume_m3: 96.4 },
      test: { date: '2026-08-19', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 24, outdoorTemperature_C: 22 },
      runs: [
        {
          direction: 'depressurisation',
          averagingTime_s: 20,
          readings: [reading(-58, 201), reading(-42, 124), reading(-27, 64)],
          zeroFlowBefore_Pa: Array.from({ length: 35 }, () => -0.8),
          zeroFlowAfter_Pa: Array.from({ length: 30 }, () => -0.6),
        },
        {
          direction: 'pressurisation',
          averagingTime_s: 20,
          readings: [reading(57, 198), reading(41, 121), reading(26, 61)],
          zeroFlowBefore_Pa: Array.from({ length: 30 }, () => -0.6),
          zeroFlowAfter_Pa: Array.from({ length: 35 }, () => -0.4),
        },
      ],
    },
  ],
  findings: [
    ['log-series-reading', 'Gauge!B182:B261'],
    ['log-constant'],
    ['log-series-reading', 'Gauge!B301:B380'],
    ['log-series-reading', 'Gauge!B421:B500'],
    ['log-series-zero-flow', 'Gauge!B2:B142', 'Gauge!B1062:B1201'],
    ['log-series-zero-flow', 'Gauge!B542:B662'],
    ['log-series-reading', 'Gauge!B702:B781'],
    ['log-series-reading', 'Gauge!B821:B900'],
    ['log-series-reading', 'Gauge!B941:B1020'],
    ['log-constant'],
  ],
}
