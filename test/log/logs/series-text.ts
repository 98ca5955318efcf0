import { levelRows } from '../support/level-rows'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const levels = [
  { pressure_Pa: -1, device: 0, hold_s: 60 },
  { pressure_Pa: -60, device: 806, hold_s: 40 },
  { pressure_Pa: -48, device: 697, hold_s: 40 },
  { pressure_Pa: -35, device: 568, hold_s: 40 },
  // Held too briefly: told of, not used.
  { pressure_Pa: -28, device: 491, hold_s: 14 },
  { pressure_Pa: -22, device: 420, hold_s: 40 },
  { pressure_Pa: -0.5, device: 0, hold_s: 60 },
]

export const seriesText: MadeUpLog = {
  name: 'series text',
  imitates:
    'a gauge’s own time log at 2 Hz in a .csv, with a few lines about the house above it; depressurisation',
  fileName: 'gauge 0007.csv',
  write: async () =>
    new TextEncoder().encode(
      [
        'House,Plot 30 (invented)',
        'Date,2026-07-02',
        'Volume,275.5,m3',
        'Inside,21.0,°C',
        'Outside,14.2,°C',
        '',
        'Time (s),Pressure (Pa),Flow (m3/h)',
        ...levelRows(levels, 2, 0.25).map(([time, pressure, flow]) => `${time},${pressure},${flow}`),
      ].join('\n'),
    ),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'series text',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'House' } },
      { path: 'test.date', at: { label: 'Date' } },
      { path: 'building.volume_m3', at: { label: 'Volume' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Inside' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Outside' } },
    ],
    series: [
      {
        direction: 'depressurisation',
        time: { at: { header: 'Time' } },
        pressure: { at: { header: 'Pressure' } },
        flow: { at: { header: 'Flow' } },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@2',
      building: { name: 'Plot 30 (invented)', volume_m3: 275.5 },
      test: { date: '2026-07-02', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 21, outdoorTemperature_C: 14.2 },
      runs: [
        {
          direction: 'depressurisation',
          averagingTime_s: 20,
          // 40 samples that alternate by 0.25 Pa: s²/n with s² = 40 · 0.25²/39. The flow, always the same, tells nothing.
          readings: pairs([-60, 806], [-48, 697], [-35, 568], [-22, 420]).map((reading) => ({
            ...reading,
            pressureUncertainty_Pa: 0.25 / Math.sqrt(39),
          })),
          // A minute of each, less the 5 s next to the step, in averages of 1 s.
          zeroFlowBefore_Pa: Array.from({ length: 55 }, () => -1),
          zeroFlowAfter_Pa: Array.from({ length: 55 }, () => -0.5),
        },
      ],
    },
  ],
  findings: [
    ['log-decimal', "'gauge 0007'!B3"],
    ['log-series-short', "'gauge 0007'!B371:B393"],
    ['log-series-reading', "'gauge 0007'!B138:B177"],
    ['log-series-reading', "'gauge 0007'!B218:B257"],
    ['log-series-reading', "'gauge 0007'!B298:B337"],
    ['log-series-reading', "'gauge 0007'!B405:B444"],
    ['log-series-zero-flow', "'gauge 0007'!B8:B118", "'gauge 0007'!B486:B595"],
    ['log-constant'],
    ['log-text-date', "'gauge 0007'!B2"],
  ],
  proposable: true,
}
