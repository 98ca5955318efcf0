import { book } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const sheet = "Fiche d'essai"
const at = (...cells: string[]) => cells.map((cell) => `'Fiche d''essai'!${cell}`)

export const frenchSheet: MadeUpLog = {
  name: 'french sheet',
  imitates:
    'a French sheet with the readings across, date in words, groups of thousands parted by narrow blanks',
  fileName: 'fiche essai.xlsx',
  write: () =>
    book({
      [sheet]: [
        ["Fiche d'essai (inventée)"],
        ['Bâtiment', 'Maison B', null, "Date de l'essai", '14 octobre 2026'],
        ['Volume intérieur (m³)', '1\u202f210,5', null, 'Opérateur', 'C. Exemple'],
        ['Température intérieure (°C)', 19, null, 'Température extérieure (°C)', '8,5'],
        ['Pression atmosphérique (hPa)', '1\u202f004,8'],
        [],
        ['Dépressurisation'],
        ['Pression à débit nul avant (Pa)', -1.2, -1.0, -1.1, -0.9],
        ['Différence de pression (Pa)', -69.8, -60.2, -50.5, -40.1, -30.6, -20.3],
        ["Débit d'air (m³/h)", '2\u202f104', '1\u202f905', 1690, '1\u202f450,5', 1207.3, 918.8],
        ['Pression à débit nul après (Pa)', -0.8, -0.7, -0.6, -0.9],
      ],
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'french sheet',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'building.name', at: { label: 'Bâtiment' } },
      { path: 'test.date', at: { label: "Date de l'essai" } },
      { path: 'test.tester', at: { label: 'Opérateur' } },
      { path: 'building.volume_m3', at: { label: 'Volume intérieur' } },
      { path: 'conditions.indoorTemperature_C', at: { label: 'Température intérieure' } },
      { path: 'conditions.outdoorTemperature_C', at: { label: 'Température extérieure' } },
      { path: 'conditions.barometricPressure_Pa', at: { label: 'Pression atmosphérique' } },
    ],
    runs: [
      {
        direction: { at: { cell: 'A7' } },
        pressure: { at: { label: 'Différence de pression' } },
        flow: { at: { label: "Débit d'air" } },
        zeroFlowBefore: { at: { label: 'Pression à débit nul avant' } },
        zeroFlowAfter: { at: { label: 'Pression à débit nul après' } },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Maison B', volume_m3: 1210.5 },
      test: { date: '2026-10-14', tester: 'C. Exemple', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 19, outdoorTemperature_C: 8.5, barometricPressure_Pa: 100_480 },
      runs: [
        {
          direction: 'depressurisation',
          readings: pairs(
            [-69.8, 2104],
            [-60.2, 1905],
            [-50.5, 1690],
            [-40.1, 1450.5],
            [-30.6, 1207.3],
            [-20.3, 918.8],
          ),
          zeroFlowBefore_Pa: [-1.2, -1.0, -1.1, -0.9],
          zeroFlowAfter_Pa: [-0.8, -0.7, -0.6, -0.9],
        },
      ],
    },
  ],
  findings: [
    ['log-word', ...at('A7')],
    ['log-text-number', ...at('B10:C10')],
    ['log-text-number', ...at('B3', 'B5', 'E10')],
    ['log-constant'],
    ['log-text-date', ...at('E2')],
    ['log-text-number', ...at('E4')],
    ['log-unit', ...at('B5')],
  ],
  proposable: true,
}
