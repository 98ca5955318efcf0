import { book, day } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const rows = (name: string, date: string, factor: number) => [
  ['Unit', name],
  ['Date', day(date)],
  ['Volume', 180 * factor, 'm³'],
  ['T in', 21, '°C'],
  ['T out', 11.5, '°C'],
  [],
  ['dp [Pa]', 'q [m³/h]'],
  [62, 300 * factor],
  [51, 264 * factor],
  [39, 222 * factor],
  [27, 175 * factor],
]

const record = (name: string, date: string, factor: number) => ({
  format: 'draughtbook/record@1',
  building: { name, site: 'Invented Court', volume_m3: 180 * factor },
  test: { date, method: 'en-13829:2001' },
  conditions: { indoorTemperature_C: 21, outdoorTemperature_C: 11.5 },
  runs: [
    {
      direction: 'pressurisation',
      readings: pairs([62, 300 * factor], [51, 264 * factor], [39, 222 * factor], [27, 175 * factor]),
    },
  ],
})

export const sheetPerTest: MadeUpLog = {
  name: 'sheet per test',
  imitates: 'a site book with a cover and one sheet per dwelling, pressurisation only, no zero-flow values',
  fileName: 'Invented Court.xlsx',
  write: () =>
    book({
      Cover: [
        ['Site', 'Invented Court'],
        ['Dwellings', 3],
      ],
      'Plot 1': rows('Plot 1', '2026-05-04', 1),
      'Plot 2': rows('Plot 2', '2026-05-04', 1.5),
      'Plot 2a': rows('Plot 2a', '2026-05-05', 2),
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'sheet per test',
    tests: { each: 'sheet', sheets: 'Plot *' },
    constants: { 'test.method': 'en-13829:2001' },
    fields: [
      { path: 'building.name', at: { label: 'Unit' } },
      { path: 'building.site', at: { label: 'Site', sheet: 'Cover' } },
      { path: 'building.volume_m3', at: { label: 'Volume' } },
      { path: 'test.date', at: { label: 'Date' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'T in' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'T out' } },
    ],
    runs: [
      { direction: 'pressurisation', pressure: { at: { header: 'dp' } }, flow: { at: { header: 'q' } } },
    ],
  },
  records: [
    record('Plot 1', '2026-05-04', 1),
    record('Plot 2', '2026-05-04', 1.5),
    record('Plot 2a', '2026-05-05', 2),
  ],
  findings: [['log-constant']],
}
