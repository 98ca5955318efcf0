import { book, sheetOf } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

export const dirtySheet: MadeUpLog = {
  name: 'dirty sheet',
  imitates:
    'a log filled in on site: units and remarks in cells, words for numbers, crossed-out parts, an error, hidden rows, merged directions',
  fileName: 'site.xlsx',
  write: () =>
    book(
      {
        Site: [
          ['House', { richText: [{ text: 'Plot ' }, { font: { bold: true }, text: '9' }] }],
          ['Date', '14. October 2026'],
          ['Volume', '236 m3 (net)'],
          ['Inside', '12 °C'],
          ['Outside', '54 °F'],
          ['Barometer', '1 004 mbar'],
          [],
          ['Mode', 'dp (Pa)', 'Flow (L/s)', 'Note'],
          ['Pressurisation', '+58.5 Pa', 150, null],
          [null, '49,5', '134', null],
          [null, 40.25, { richText: [{ font: { strike: true }, text: '99' }, { text: ' 117' }] }, null],
          [null, 35, 'n/a', null],
          [null, { error: '#DIV/0!' }, 104, null],
          [null, 30, { formula: 'C9*0.65', result: 97.5 }, 'checked'],
          [null, 20, 75, null],
        ],
      },
      (workbook) => {
        const sheet = sheetOf(workbook, 'Site')
        sheet.mergeCells('A9:A15')
        sheet.getRow(15).hidden = true
      },
    ),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'dirty sheet',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'House' } },
      { path: 'test.date', at: { label: 'Date' } },
      { path: 'building.volume_m3', at: { label: 'Volume' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Inside' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Outside' } },
      { path: 'conditions.barometricPressure_Pa', at: { label: 'Barometer' } },
    ],
    runs: [
      {
        direction: { column: { header: 'Mode' } },
        pressure: { at: { range: 'B9:B15' }, unit: 'Pa' },
        flow: { at: { range: 'C9:C15' }, unit: 'L/s' },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Plot 9', volume_m3: 236 },
      test: { date: '2026-10-14', method: 'iso-9972:2015' },
      conditions: {
        indoorTemperature_C: 12,
        outdoorTemperature_C: ((54 - 32) * 5) / 9,
        barometricPressure_Pa: 100_400,
      },
      runs: [
        {
          direction: 'pressurisation',
          // 1 L/s is 3.6 m³/h by definition.
          readings: pairs(
            [58.5, 150 * 3.6],
            [49.5, 134 * 3.6],
            [40.25, 117 * 3.6],
            [30, 97.5 * 3.6],
            [20, 75 * 3.6],
          ),
        },
      ],
    },
  ],
  findings: [
    ['log-placeholder', 'Site!C12'],
    ['log-error-value', 'Site!B13'],
    ['log-word', 'Site!A9'],
    ['log-merged', 'Site!A9'],
    ['log-text-number', 'Site!B3:B5', 'Site!B9', 'Site!C10:C11'],
    ['log-unit', 'Site!C9:C11', 'Site!C14:C15'],
    ['log-text-number', 'Site!B10'],
    ['log-struck-through', 'Site!C11'],
    ['log-formula', 'Site!C14'],
    ['log-hidden', 'Site!B15:C15'],
    ['log-constant'],
    ['log-text-date', 'Site!B2'],
    ['log-remark', 'Site!B3'],
    ['log-unit-in-cell', 'Site!B5'],
    ['log-unit', 'Site!B5'],
    ['log-text-number', 'Site!B6'],
    ['log-unit-in-cell', 'Site!B6'],
    ['log-unit', 'Site!B6'],
  ],
}
