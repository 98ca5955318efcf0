import { book } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const sheet = 'Messprotokoll'
const at = (...cells: string[]) => cells.map((cell) => `${sheet}!${cell}`)
const table = (nth: number) => ({
  pressure: { at: { header: 'Druckdifferenz', nth, skip: 1 }, unit: 'Pa' },
  flow: { at: { header: 'Volumenstrom', nth, skip: 1 }, unit: 'm³/h' },
})

export const germanProtocol: MadeUpLog = {
  name: 'german protocol',
  imitates:
    'a German protocol typed as text with decimal commas, units in a row below the headings, directions stacked',
  fileName: 'Messprotokoll.xlsx',
  write: () =>
    book({
      [sheet]: [
        ['Messprotokoll (erfunden)'],
        ['Objekt:', 'Reihenhaus 4'],
        ['Prüfdatum:', '14.10.2026'],
        ['Prüfer:', 'B. Muster'],
        ['Nettoluftvolumen [m³]:', '1.234,5'],
        ['Volumenbezug:', 'netto'],
        ['Innentemperatur [°C]:', '20,5'],
        ['Außentemperatur [°C]:', '9,0'],
        ['Luftdruck [mbar]:', '1013,2'],
        ['Norm:', 'DIN EN ISO 9972'],
        [],
        ['Unterdruckmessung'],
        ['Natürliche Druckdifferenz vorher', '-0,5', '-0,7', '-0,6'],
        ['Natürliche Druckdifferenz nachher', '-0,3', '-0,4', '-0,2'],
        ['Druckdifferenz', 'Volumenstrom'],
        ['Pa', 'm³/h'],
        ['-60,4', '1.480,2'],
        ['-50,9', '1.322,7'],
        ['-40,2', '1.139,4'],
        ['-30,8', '959,6'],
        ['-20,7', '741,3'],
        [],
        ['Überdruckmessung'],
        ['Natürliche Druckdifferenz vorher', '0,1', '0,2', '0,1'],
        ['Natürliche Druckdifferenz nachher', '0,4', '0,3', '0,2'],
        ['Druckdifferenz', 'Volumenstrom'],
        ['Pa', 'm³/h'],
        ['60,1', '1.521,9'],
        ['50,3', '1.357,0'],
        ['40,6', '1.181,8'],
        ['30,2', '976,4'],
        ['20,9', '769,0'],
      ],
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'german protocol',
    decimal: ',',
    fields: [
      { path: 'building.name', at: { label: 'Objekt' } },
      { path: 'test.date', at: { label: 'Prüfdatum' } },
      { path: 'test.tester', at: { label: 'Prüfer' } },
      { path: 'test.method', at: { label: 'Norm' } },
      { path: 'building.volume_m3', at: { label: 'Nettoluftvolumen' } },
      { path: 'building.volumeBasis', at: { label: 'Volumenbezug' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Innentemperatur' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Außentemperatur' } },
      { path: 'conditions.barometricPressure_Pa', at: { label: 'Luftdruck' } },
    ],
    runs: [1, 2].map((nth) => ({
      direction: nth === 1 ? ('depressurisation' as const) : ('pressurisation' as const),
      ...table(nth),
      zeroFlowBefore: { at: { label: 'Natürliche Druckdifferenz vorher', nth }, unit: 'Pa' },
      zeroFlowAfter: { at: { label: 'Natürliche Druckdifferenz nachher', nth }, unit: 'Pa' },
    })),
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Reihenhaus 4', volume_m3: 1234.5, volumeBasis: 'net' },
      test: { date: '2026-10-14', tester: 'B. Muster', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 20.5, outdoorTemperature_C: 9, barometricPressure_Pa: 101_320 },
      runs: [
        {
          direction: 'depressurisation',
          readings: pairs([-60.4, 1480.2], [-50.9, 1322.7], [-40.2, 1139.4], [-30.8, 959.6], [-20.7, 741.3]),
          zeroFlowBefore_Pa: [-0.5, -0.7, -0.6],
          zeroFlowAfter_Pa: [-0.3, -0.4, -0.2],
        },
        {
          direction: 'pressurisation',
          readings: pairs([60.1, 1521.9], [50.3, 1357.0], [40.6, 1181.8], [30.2, 976.4], [20.9, 769.0]),
          zeroFlowBefore_Pa: [0.1, 0.2, 0.1],
          zeroFlowAfter_Pa: [0.4, 0.3, 0.2],
        },
      ],
    },
  ],
  findings: [
    // Decimal comma alone; then comma with groups of thousands.
    ['log-text-number', ...at('B7:B9', 'B13:D14', 'A17:A21', 'B20:B21', 'B24:D25', 'A28:A32', 'B31:B32')],
    ['log-text-number', ...at('B5', 'B17:B19', 'B28:B30')],
    ['log-text-date', `${sheet}!B3`],
    ['log-word', `${sheet}!B10`],
    ['log-word', `${sheet}!B6`],
    ['log-unit', `${sheet}!B9`],
  ],
  proposable: true,
}
