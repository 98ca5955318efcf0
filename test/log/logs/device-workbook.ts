import { book, day, sheetOf } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'

const reading = (pressure_Pa: number, devicePressure_Pa: number, range: string) => ({
  pressure_Pa,
  devicePressure_Pa,
  range,
})

export const deviceWorkbook: MadeUpLog = {
  name: 'device workbook',
  imitates:
    'an engineer’s workbook: named cells, the device’s own pressure with its range, formulas, merged titles, a hidden row, a reading crossed out',
  fileName: 'engineer.xlsx',
  write: () =>
    book(
      {
        Inputs: [
          ['Inputs (invented)'],
          ['Length', 12],
          ['Width', 7.5],
          ['Mean height', 2.6],
          ['Volume', { formula: 'B2*B3*B4', result: 234 }],
          ['Building', 'Workshop'],
          ['Date', day('2026-02-20')],
          ['Inside', 17.5],
          ['Outside', 3],
        ],
        Readings: [
          ['Depressurisation readings'],
          ['Building', 'Device', 'Range', 'Remark'],
          ['Pa', 'Pa', null, null],
          [-59.1, 182, 'wide', null],
          [-51.4, 150, 'wide', 'door moved'],
          [-50.2, 145, 'wide', null],
          [-39.8, 211, 'narrow', null],
          [-30.5, 143, 'narrow', null],
          [-19.9, 78, 'narrow', null],
          ['Mean', 151.5],
        ],
        Zero: [
          ['before', 'after'],
          [-0.9, -0.4],
          [-1.1, -0.6],
          [-1.0, -0.5],
        ],
        Device: [
          ['Range', 'Coefficient', 'Exponent', 'From (Pa)', 'To (Pa)'],
          ['wide', 31.2, 0.512, 30, 300],
          ['narrow', 14.1, 0.508, 25, 280],
        ],
      },
      (workbook) => {
        workbook.definedNames.add('Inputs!$B$5', 'Volume')
        workbook.definedNames.add('Zero!$A$2:$A$4', 'ZeroBefore')
        workbook.definedNames.add('Zero!$B$2:$B$4', 'ZeroAfter')
        const readings = sheetOf(workbook, 'Readings')
        readings.mergeCells('A1:D1')
        readings.getRow(8).hidden = true
        for (const address of ['A5', 'B5', 'C5']) readings.getCell(address).font = { strike: true }
      },
    ),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'device workbook',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'Building' } },
      { path: 'building.volume_m3', at: { name: 'Volume' }, unit: 'm³' },
      { path: 'test.date', at: { label: 'Date' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Inside' }, unit: '°C' },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Outside' }, unit: '°C' },
    ],
    lists: [
      {
        path: 'flowDevice.ranges',
        columns: {
          label: { at: { header: 'Range', sheet: 'Device' } },
          coefficient: { at: { header: 'Coefficient', sheet: 'Device' } },
          exponent: { at: { header: 'Exponent', sheet: 'Device' } },
          minimumPressure_Pa: { at: { header: 'From', sheet: 'Device' } },
          maximumPressure_Pa: { at: { header: 'To', sheet: 'Device' } },
        },
      },
    ],
    runs: [
      {
        direction: {
          at: { cell: 'A1', sheet: 'Readings' },
          words: { 'Depressurisation readings': 'depressurisation' },
        },
        pressure: { at: { header: 'Building', skip: 1, sheet: 'Readings' }, unit: 'Pa' },
        devicePressure: { at: { header: 'Device', skip: 1, sheet: 'Readings' }, unit: 'Pa' },
        range: { at: { header: 'Range', skip: 1, sheet: 'Readings' } },
        zeroFlowBefore: { at: { name: 'ZeroBefore' }, unit: 'Pa' },
        zeroFlowAfter: { at: { name: 'ZeroAfter' }, unit: 'Pa' },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Workshop', volume_m3: 234 },
      test: { date: '2026-02-20', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 17.5, outdoorTemperature_C: 3 },
      flowDevice: {
        ranges: [
          {
            label: 'wide',
            coefficient: 31.2,
            exponent: 0.512,
            minimumPressure_Pa: 30,
            maximumPressure_Pa: 300,
          },
          {
            label: 'narrow',
            coefficient: 14.1,
            exponent: 0.508,
            minimumPressure_Pa: 25,
            maximumPressure_Pa: 280,
          },
        ],
      },
      runs: [
        {
          direction: 'depressurisation',
          readings: [
            reading(-59.1, 182, 'wide'),
            reading(-50.2, 145, 'wide'),
            reading(-39.8, 211, 'narrow'),
            reading(-30.5, 143, 'narrow'),
            reading(-19.9, 78, 'narrow'),
          ],
          zeroFlowBefore_Pa: [-0.9, -1.1, -1],
          zeroFlowAfter_Pa: [-0.4, -0.6, -0.5],
        },
      ],
    },
  ],
  findings: [
    ['log-struck-through', 'Readings!A5:C5'],
    ['log-summary-row', 'Readings!A10'],
    ['log-word', 'Readings!A1'],
    ['log-hidden', 'Readings!A8:C8'],
    ['log-constant'],
    ['log-formula', 'Inputs!B5'],
  ],
}
