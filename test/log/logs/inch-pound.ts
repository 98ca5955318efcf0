import { book } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'

/** Exact by definition: 1 cfm = 0.3048³·60 m³/h, 1 ft³ = 0.3048³ m³, 1 ft² = 0.3048² m². */
const CFM = 0.3048 ** 3 * 60
/** Inch of mercury and of water, conventional: NIST SP 811 (2008), appendix B.8. */
const INHG = 3386.389
const INH2O = 249.0889

const reading = (inH2O: number, cfm: number) => ({ pressure_Pa: -inH2O * INH2O, flow_m3_h: cfm * CFM })

export const inchPound: MadeUpLog = {
  name: 'inch-pound',
  imitates: 'an inch-pound log: flows with their unit in the cell, pressures in inches of water without sign',
  fileName: 'house-31.xlsx',
  write: () =>
    book({
      Data: [
        ['House', 'Unit 31 (invented)'],
        ['Test date', '10/14/2026'],
        ['Conditioned volume', '15,500 ft3'],
        ['Floor area', 1937.5, 'sq ft'],
        ['Inside temp', '68 °F'],
        ['Outside temp', '54 °F'],
        ['Barometer', 29.92, 'inHg'],
        ['Zero pressure start', 0.004],
        ['Zero pressure end', 0.002],
        [],
        ['House pressure', 'Fan flow'],
        [0.24, '1,250 cfm'],
        [0.2, '1,105 cfm'],
        [0.16, '962 CFM'],
        [0.12, '795 cfm (gust)'],
        [0.08, '612 cfm'],
      ],
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'inch-pound',
    decimal: '.',
    dateOrder: 'mdy',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'House' } },
      { path: 'test.date', at: { label: 'Test date' } },
      { path: 'building.volume_m3', at: { label: 'Conditioned volume' } },
      { path: 'building.floorArea_m2', at: { label: 'Floor area' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Inside temp' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Outside temp' } },
      { path: 'conditions.barometricPressure_Pa', at: { label: 'Barometer' } },
    ],
    runs: [
      {
        direction: 'depressurisation',
        sign: { readings: 'without sign', zeroFlow: 'outside minus inside' },
        pressure: { at: { header: 'House pressure' }, unit: 'inH2O' },
        flow: { at: { header: 'Fan flow' }, unit: 'cfm' },
        zeroFlowBefore: { at: { label: 'Zero pressure start' }, unit: 'inH2O' },
        zeroFlowAfter: { at: { label: 'Zero pressure end' }, unit: 'inH2O' },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: {
        name: 'Unit 31 (invented)',
        volume_m3: 15_500 * 0.3048 ** 3,
        floorArea_m2: 1937.5 * 0.3048 ** 2,
      },
      test: { date: '2026-10-14', method: 'iso-9972:2015' },
      conditions: {
        indoorTemperature_C: 20,
        outdoorTemperature_C: ((54 - 32) * 5) / 9,
        barometricPressure_Pa: 29.92 * INHG,
      },
      runs: [
        {
          direction: 'depressurisation',
          readings: [
            reading(0.24, 1250),
            reading(0.2, 1105),
            reading(0.16, 962),
            reading(0.12, 795),
            reading(0.08, 612),
          ],
          zeroFlowBefore_Pa: [-0.004 * INH2O],
          zeroFlowAfter_Pa: [-0.002 * INH2O],
        },
      ],
    },
  ],
  findings: [
    ['log-unit', 'Data!B8:B9', 'Data!A12:A16'],
    ['log-sign', 'Data!B8:B9'],
    ['log-text-number', 'Data!B3', 'Data!B12:B13'],
    ['log-unit', 'Data!B12:B16'],
    ['log-sign', 'Data!A12:A16'],
    ['log-text-number', 'Data!B5:B6', 'Data!B14:B16'],
    ['log-remark', 'Data!B15'],
    ['log-constant'],
    ['log-text-date', 'Data!B2'],
    ['log-unit-in-cell', 'Data!B3'],
    ['log-unit', 'Data!B3'],
    ['log-unit', 'Data!B4'],
    ['log-unit-in-cell', 'Data!B5:B6'],
    ['log-unit', 'Data!B5:B6'],
    ['log-unit', 'Data!B7'],
  ],
}
