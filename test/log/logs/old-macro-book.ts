import { strToU8, unzipSync, zipSync } from 'fflate'
import { book, day } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

export const oldMacroBook: MadeUpLog = {
  name: 'old macro book',
  imitates:
    'an .xlsm from a computer that counts days from 1904; gauge hooked up the other way round; both directions in one column',
  fileName: 'OLD LOG.XLSM',
  write: async () => {
    const bytes = await book(
      {
        Data: [
          ['Job', 'Hall (invented)', null, 'm3', 5200],
          ['Day', day('2026-09-30'), null, 'inside', 16],
          [null, null, null, 'outside', 13.5],
          [],
          ['out-in, Pa', 'm3/h'],
          [63.2, 4120],
          [48.8, 3490],
          [33.1, 2721],
          [-62.0, 4230],
          [-47.5, 3554],
          [-31.9, 2744],
        ],
      },
      (workbook) => {
        workbook.properties.date1904 = true
      },
    )
    // What makes it a macro workbook for a reader: the part with the macros. Its content is never looked at.
    return zipSync({ ...unzipSync(bytes), 'xl/vbaProject.bin': strToU8('not looked at') })
  },
  layout: {
    format: 'draughtbook/layout@1',
    name: 'old macro book',
    constants: { 'test.method': 'en-13829:2001' },
    fields: [
      { path: 'building.name', at: { cell: 'B1' } },
      { path: 'test.date', at: { cell: 'B2' } },
      { path: 'building.volume_m3', at: { cell: 'E1' }, unit: 'm3' },
      { path: 'conditions.indoorTemperature_C', at: { cell: 'E2' }, unit: 'C' },
      { path: 'conditions.outdoorTemperature_C', at: { cell: 'E3' }, unit: 'C' },
    ],
    runs: [
      {
        direction: 'by sign',
        sign: { readings: 'outside minus inside', zeroFlow: 'outside minus inside' },
        pressure: { at: { range: 'A6:A11' }, unit: 'Pa' },
        flow: { at: { range: 'B6:B11' }, unit: 'm3/h' },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Hall (invented)', volume_m3: 5200 },
      test: { date: '2026-09-30', method: 'en-13829:2001' },
      conditions: { indoorTemperature_C: 16, outdoorTemperature_C: 13.5 },
      runs: [
        { direction: 'depressurisation', readings: pairs([-63.2, 4120], [-48.8, 3490], [-33.1, 2721]) },
        { direction: 'pressurisation', readings: pairs([62, 4230], [47.5, 3554], [31.9, 2744]) },
      ],
    },
  ],
  findings: [['log-macros'], ['log-sign', 'Data!A6:A11'], ['log-constant'], ['log-date-1904', 'Data!B2']],
}
