import { book, day } from '../support/book'
import type { MadeUpLog } from '../support/made-up-log'
import { pairs } from '../support/made-up-log'

const heads = [
  'Test no.',
  'Date',
  'Dwelling',
  'Volume (m³)',
  'Envelope (m²)',
  'Ti (°C)',
  'Te (°C)',
  'Direction',
]
const numbered = (head: string) => [1, 2, 3, 4, 5].map((index) => `${head}${index}`)

export const rowPerTest: MadeUpLog = {
  name: 'row per test',
  imitates: 'a long list with one test per row and the readings in numbered columns, some left empty',
  fileName: 'list.xlsx',
  write: () =>
    book({
      List: [
        ['All tests of the spring (invented)'],
        [...heads, ...numbered('P'), ...numbered('Q')],
        [
          101,
          day('2026-04-02'),
          'Flat 1',
          150,
          210,
          20,
          12,
          'Depressurisation',
          -60,
          -50,
          -40,
          -30,
          -20,
          390,
          346,
          299,
          247,
          189,
        ],
        [
          102,
          day('2026-04-02'),
          'Flat 2',
          152,
          212,
          20,
          12,
          'Pressurisation',
          58,
          49,
          38,
          29,
          null,
          402,
          360,
          304,
          255,
          null,
        ],
      ],
    }),
  layout: {
    format: 'draughtbook/layout@1',
    name: 'row per test',
    tests: { each: 'row', sheet: 'List', headerRow: 2 },
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [
      { path: 'test.id', at: { header: 'Test no.' } },
      { path: 'test.date', at: { header: 'Date' } },
      { path: 'building.name', at: { header: 'Dwelling' } },
      { path: 'building.volume_m3', at: { header: 'Volume' } },
      { path: 'building.envelopeArea_m2', at: { header: 'Envelope' } },
      { path: 'conditions.indoorTemperature_C', at: { header: 'Ti' } },
      { path: 'conditions.outdoorTemperature_C', at: { header: 'Te' } },
    ],
    runs: [
      {
        direction: { at: { header: 'Direction' } },
        pressure: { at: { headers: 'P*' }, unit: 'Pa' },
        flow: { at: { headers: numbered('Q') }, unit: 'm³/h' },
      },
    ],
  },
  records: [
    {
      format: 'draughtbook/record@1',
      building: { name: 'Flat 1', volume_m3: 150, envelopeArea_m2: 210 },
      test: { id: '101', date: '2026-04-02', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 20, outdoorTemperature_C: 12 },
      runs: [
        {
          direction: 'depressurisation',
          readings: pairs([-60, 390], [-50, 346], [-40, 299], [-30, 247], [-20, 189]),
        },
      ],
    },
    {
      format: 'draughtbook/record@1',
      building: { name: 'Flat 2', volume_m3: 152, envelopeArea_m2: 212 },
      test: { id: '102', date: '2026-04-02', method: 'iso-9972:2015' },
      conditions: { indoorTemperature_C: 20, outdoorTemperature_C: 12 },
      runs: [{ direction: 'pressurisation', readings: pairs([58, 402], [49, 360], [38, 304], [29, 255]) }],
    },
  ],
  findings: [['log-word', 'List!H3'], ['log-constant']],
}
