import { questions } from '../../../shared-calc/src/catalogue/questions.js'

type Samples = { [Id in keyof typeof questions]: Parameters<(typeof questions)[Id]>[] }

/** Parameters as a log may give them, every case of every question at least once. */
const samples: Samples = {
  direction: [[{ heading: 'Log!B7' }]],
  column: [
    [{ about: 'pressure', together: undefined, columns: [{ value: 'Log!B7', label: 'Log!B7 "dp" in Pa' }] }],
    [{ about: 'flow', together: 'all', columns: [{ value: 'Fan 1', label: 'Log!C7 "Fan 1" in m³/h' }] }],
  ],
  exchangedColumns: [[{ pressures: 'Flow (m³/h)', flows: 'Pressure (Pa)' }]],
  unnamedColumns: [
    [{ tables: [{ pressure: 'Log!B7', flows: ['Log!C7'] }] }],
    [
      {
        tables: [
          { pressure: 'Log!B7', flows: ['Log!C7', 'Log!D7'] },
          { pressure: 'Log!B20', flows: ['Log!C20'] },
        ],
      },
    ],
  ],
  fans: [[{ columns: ['Log!B9', 'Log!E9'] }]],
  copied: [[{ copies: ["'House B'!B9"], originals: ["'House A'!B9"] }]],
  pressureUnit: [[{ heading: 'Log!B7' }]],
  flowUnit: [[{ heading: 'Log!C7', american: false }], [{ heading: 'Log!C7', american: true }]],
  remarkedValue: [[{ field: 'internal volume', cell: 'Log!B3', remark: 'wrong, use 398.2', value: 412.6 }]],
  flowUnitDoubt: [
    [{ stated: ['l/s', 'm³/h'], better: ['l/s', 'm³/h'], flows: [1200, 340], n50: 2.1 }],
    [{ stated: ['m³/min', 'm³/min'], better: ['m³/h', 'l/s'], flows: [24000, 23000], n50: 57.3 }],
    [
      {
        stated: ['l/s'],
        better: ['m³/h'],
        flows: [1200],
        n50: 2.9,
        result: { label: 'n50', value: 0.81, cell: 'Log!B40' },
      },
    ],
    [
      {
        stated: ['m³/h', 'm³/h'],
        better: ['l/s'],
        flows: [240, 250],
        n50: 0.4,
        range: { text: 'Fan range: 900 – 4500 m³/h', cell: 'Log!A8' },
      },
    ],
  ],
  flowStatedAt: [[{ cell: 'Log!F7', text: 'Flow at 20 °C and 1013 mbar' }]],
  deviceUnit: [[]],
  deviceRange: [[{ ranges: ['A', 'B'] }]],
  deviceTable: [
    [
      {
        tables: [
          { cells: 'Rings!A2:C5', title: 'Calibration 2024' },
          { cells: 'Rings!A8:C11', title: '' },
        ],
      },
    ],
  ],
  zeroFlowLabels: [[{ labels: ['Pre', 'Post'] }]],
  zeroFlowInHeading: [
    [{ direction: 'pressurisation', heading: 'Δp ohne Δp0 (Pa)', read: ['-1.2 Pa before', '-0.8 Pa after'] }],
  ],
  zeroFlowMissing: [
    [{ direction: 'depressurisation', cell: 'Log!A7', label: 'Depressurisation, baseline see below' }],
    [{ direction: undefined, cell: 'Log!A7', label: 'Zero flow' }],
  ],
  zeroFlowUnused: [
    [
      {
        direction: 'pressurisation',
        labels: ['Zero flow repeat (Pa)'],
        others: ['3.7 Pa'],
        instead: ['0.7 Pa before', '3.7 Pa after'],
        both: undefined,
        read: ['0.7 Pa before', '1.2 Pa after'],
      },
    ],
    [
      {
        direction: undefined,
        labels: ['Zero flow 1', 'Zero flow 2'],
        others: ['0.7 Pa', '1.2 Pa'],
        instead: ['0.7 Pa', '1.2 Pa'],
        both: undefined,
        read: undefined,
      },
    ],
    [
      {
        direction: 'depressurisation',
        labels: ['Zero a'],
        others: ['-1.1 Pa'],
        instead: ['-1.1 Pa'],
        both: ['-1.7 Pa before', '-1.1 Pa after'],
        read: ['-1.7 Pa before'],
      },
    ],
  ],
  zeroFlowRival: [
    [
      {
        direction: 'depressurisation',
        cells: ['Log!B9', 'Log!E9'],
        read: ['-1.7 Pa before', '-1.1 Pa after'],
        instead: ['-1.7 Pa before', '0.4 Pa after'],
      },
    ],
    [
      {
        direction: undefined,
        cells: ['Log!B9', 'Log!E9'],
        read: ['-1.7 Pa before'],
        instead: ['0.4 Pa before'],
      },
    ],
  ],
  zeroFlowOneSided: [
    [{ direction: 'pressurisation', read: ['0.7 Pa before'], lacks: 'after' }],
    [{ direction: undefined, read: ['0.7 Pa after', '0.9 Pa after'], lacks: 'before' }],
  ],
  testOfYear: [[{ title: '2025', date: '2026-06-03', tests: ['2026', '2025'] }]],
  pressureSign: [[]],
  zeroFlowSign: [[{ direction: 'depressurisation', mean: '1.23' }]],
  grey: [[{ cells: ['Log!B9'], look: 'written' }], [{ cells: ['Log!B9', 'Log!B10'], look: 'shaded' }]],
  remarked: [
    [{ cells: ['Log!B9'], whys: 'The comment in Log!B9 says "gust"' }],
    [{ cells: ['Log!B9', 'Log!B10'], whys: 'Column "Used" says "no" in Log!F9' }],
  ],
  volume: [
    [{ rooms: undefined }],
    [
      {
        rooms: undefined,
        unread: { text: '287 + 150 = 437', cell: 'Test!B3', why: 'which is not one number' },
      },
    ],
    [{ rooms: undefined, unread: { text: '0', cell: 'Test!B3', why: 'but a volume must be above 0' } }],
    [
      {
        rooms: undefined,
        unread: { text: '312', cell: 'Test!B3', why: 'with the unit Pa, which is not a unit of volume' },
      },
    ],
    [{ rooms: { sum: 250.4, unit: 'm³', typed: '250.4 m3', count: 7 } }],
    [{ rooms: { sum: 250.4, unit: undefined, typed: undefined, count: 7 } }],
    [{ rooms: undefined, unstored: 'Test!B3' }],
  ],
  volumeOfSides: [[{ cell: 'Test!B3', text: '12.4 x 8.2 x 2.5 m', amount: 254.2, unit: 'm³' }]],
  whichVolume: [
    [{ only: 'Gross volume', choices: [{ value: '512 m3', label: '512 m³' }] }],
    [{ only: undefined, choices: [{ value: '512 m3', label: '512 m³' }] }],
  ],
  whichArea: [
    [
      {
        name: 'envelopeArea',
        areas: [
          { area_m2: 412, text: '412 m²', label: 'Envelope area', cell: 'Test!B6' },
          { area_m2: 398, text: '398 m²', label: 'Envelope area, as built', cell: 'Test!B7' },
        ],
      },
    ],
    [
      {
        name: 'floorArea',
        areas: [
          { area_m2: 120, text: '120 m²', label: 'Floor area', cell: 'Test!B6' },
          { area_m2: 132, text: '132 m²', label: 'Floor area', cell: 'Test!C6' },
        ],
      },
    ],
  ],
  volumeUnit: [[{ value: 12_500, feetFirst: true }], [{ value: 350, feetFirst: false }]],
  decimal: [[{ cell: 'Test!B3', value: 1412, other: 1.412 }]],
  contradictedSize: [
    [
      {
        name: 'volume',
        label: 'n50 (1/h)',
        value: 2.97,
        cell: 'Test!B34',
        read: 2.391,
        size: 619.1,
        fitting: 499,
      },
    ],
    [
      {
        name: 'envelopeArea',
        label: 'Air permeability at 50 Pa',
        value: 1.02,
        cell: 'Test!B35',
        read: 0.856,
        size: 748.6,
        fitting: 628,
      },
    ],
  ],
  temperature: [
    [{ side: 'indoor', unstored: undefined }],
    [{ side: 'outdoor', unstored: undefined }],
    [{ side: 'outdoor', unstored: 'Test!B5' }],
  ],
  whichTemperature: [
    [
      {
        side: 'indoor',
        values: [
          { text: '20.5 °C', label: 'Indoor temp', cell: 'Test!B4' },
          { text: '23.9 °C', label: 'Room', cell: 'Office!B30' },
        ],
        mean: '22.2 °C',
      },
    ],
    [
      {
        side: 'outdoor',
        values: ['B4', 'B9', 'B14'].map((cell, index) => ({ text: `${8 + index} °C`, label: 'Te', cell })),
        mean: '9 °C',
      },
    ],
  ],
  flowUnitTwice: [[{ cell: 'Log!C9', units: ['m³/h', 'L/s'] }]],
  flowUnitsExchanged: [[{ cells: ['Test!B10', 'Test!C10'], own: 'm³/h', other: 'L/s' }]],
  pressureUnitDoubt: [[{ heading: 'Test!A9', stated: 'mbar', highest: 6420, better: ['Pa'] }]],
  zeroFlowUnstored: [
    [{ direction: 'depressurisation', cells: ['Log!B8', 'Log!B20'], read: ['-0.9 Pa after'] }],
    [{ direction: undefined, cells: ['Log!B8', 'Log!B9', 'Log!B20', 'Log!B21'], read: [] }],
  ],
  temperatureUnit: [[{ side: 'indoor', value: 40 }]],
  barometerUnit: [[{ value: 500 }]],
  date: [[]],
  whichDate: [
    [{ dates: ['2026-04-03', '2026-03-04'], monthFirst: false }],
    [{ dates: ['2026-04-03', '2026-03-04'], monthFirst: true }],
  ],
}

/** Every question with the parameters of its samples: what a person is asked. */
export const asked = Object.entries(samples).flatMap(([id, each]) =>
  each.map((params) => {
    const ask = questions[id as keyof typeof questions] as (
      ...params: unknown[]
    ) => ReturnType<typeof questions.date>
    return { id, ...ask(...(params as unknown[])) }
  }),
)
