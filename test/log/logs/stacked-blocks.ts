import { book, day } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const block = (id: string, name: string, flows: readonly number[]) => [
  ['Test', id, 'Dwelling', name, day('2026-06-01')],
  ['V', 410, 'm³', 'inside', 22.5, '°C'],
  ['mean zero pressure', -1.5, -1.1, 'outside', 15, '°C'],
  ['Pressure', -65, -55, -45, -35, -25],
  ['Flow', ...flows],
  [],
]

const record = (id: string, name: string, [a = 0, b = 0, c = 0, d = 0, e = 0]: readonly number[]) => ({
  format: 'draughtbook/record@1',
  building: { name, volume_m3: 410 },
  test: { id, date: '2026-06-01', method: 'iso-9972:2015' },
  conditions: { indoorTemperature_C: 22.5, outdoorTemperature_C: 15 },
  runs: [
    {
      direction: 'depressurisation',
      readings: pairs([-65, a], [-55, b], [-45, c], [-35, d], [-25, e]),
      zeroFlowBefore_Pa: [-1.5],
      zeroFlowAfter_Pa: [-1.1],
    },
  ],
})

const first = [940, 843, 741, 631, 507]
const second = [1012, 909, 797, 680, 547]

export const stackedBlocks: MadeUpLog = {
  name: 'stacked blocks',
  imitates:
    'a running log that copies the same small block below the last one for every test; zero flow as two means',
  fileName: 'running log.xlsx',
  write: () =>
    book({
      Log: [['Running log (invented)'], ...block('A-1', 'Unit 5', first), ...block('A-2', 'Unit 6', second)],
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'stacked blocks',
    tests: { each: 'block', label: 'Test' },
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'test.id', at: { label: 'Test' } },
      { path: 'building.name', at: { cell: 'D2' } },
      { path: 'test.date', at: { cell: 'E2' } },
      { path: 'building.volume_m3', at: { label: 'V' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'inside' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'outside' } },
    ],
    runs: [
      {
        direction: 'depressurisation',
        pressure: { at: { range: 'B5:F5' }, unit: 'Pa' },
        flow: { at: { range: 'B6:F6' }, unit: 'm3/h' },
        zeroFlowBefore: { at: { range: 'B4' }, unit: 'Pa' },
        zeroFlowAfter: { at: { range: 'C4' }, unit: 'Pa' },
      },
    ],
  },
  records: [record('A-1', 'Unit 5', first), record('A-2', 'Unit 6', second)],
  findings: [['log-constant']],
}
