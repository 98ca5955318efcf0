import { describe, expect, it } from 'vitest'
import { book, type Rows, sheetOf } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0005)

describe('a reading that is set aside without a word', () => {
  const at = FORM.length + 1 + 5
  const withFaulty = (look: 'written' | 'shaded') =>
    sheetOfForm(
      [
        ['Depressurisation'],
        ...zeroRows(dep),
        HEADINGS,
        dep.readings[0] ?? [],
        [-44, 999],
        ...dep.readings.slice(1),
      ],
      (workbook) => {
        for (const column of [1, 2]) {
          const cell = sheetOf(workbook, 'Test').getCell(at + 1, column)
          if (look === 'written') cell.font = { color: { argb: 'FFA6A6A6' } }
          else cell.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFD0D0D0' } }
        }
      },
    )

  it.each(['written', 'shaded'] as const)(
    'in grey (%s) is asked about, and left out as answered',
    async (look) => {
      const bytes = await withFaulty(look)
      const open = read(bytes)
      expect(open.asked).toEqual(['readings.grey'])
      expect(open.n50).toBeUndefined()
      const left = read(bytes, { 'readings.grey': 'leave out' })
      close(left.n50, n50Of([dep]))
      expect(left.said.join('\n')).toMatch(/left out, as you answered/)
      expect(read(bytes, { 'readings.grey': 'read' }).record?.runs[0]?.readings).toHaveLength(9)
    },
  )

  it('but for a comment that refuses it is asked about', async () => {
    const bytes = await sheetOfForm(
      [['Depressurisation'], ...zeroRows(dep), HEADINGS, [-44, 999], ...dep.readings],
      (workbook) => {
        sheetOf(workbook, 'Test').getCell(at, 2).note = 'door opened, ignore'
      },
    )
    expect(read(bytes).texts.join()).toMatch(/door opened, ignore/)
    close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of([dep]))
  })

  it('in a column that says which were used is left out and named', async () => {
    const rows: Rows = [
      [...HEADINGS, 'Used?'],
      [-44, 999, 'no'],
      ...dep.readings.map((row) => [...row, 'yes']),
    ]
    const { n50, said, asked } = read(await sheetOfForm([['Depressurisation'], ...zeroRows(dep), ...rows]))
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
    expect(said.join('\n')).toMatch(/"Used\?" says "no"/)
  })
})

describe('readings without headings', () => {
  it('are told apart by their curve, and asked about with the unit of the flow', async () => {
    const bytes = await sheetOfForm([
      ['Pressurisation'],
      ...zeroRows(pres),
      ...pres.readings.map(([p, q], index) => [index + 1, q, p]),
    ])
    const { asked, texts } = read(bytes)
    expect(asked).toEqual(['table.columns', 'flow.unit'])
    expect(texts[0]).toMatch(/building pressure from C11 down, air flow from B11 down/)
    close(read(bytes, { 'table.columns': 'yes', 'flow.unit': 'm3/h' }).n50, n50Of([pres]))
    expect(read(bytes, { 'table.columns': 'no', 'flow.unit': 'm3/h' }).problems.join()).toMatch(
      /write headings/i,
    )
  })

  it('below a table with headings are asked about, not passed over', async () => {
    const bytes = await sheetOfForm([
      ['Depressurisation'],
      ...zeroRows(dep),
      HEADINGS,
      ...dep.readings,
      [null],
      ['Pressurisation'],
      ...zeroRows(pres),
      ...pres.readings,
    ])
    expect(read(bytes).asked).toEqual(['table.columns'])
    close(read(bytes, { 'table.columns': 'yes' }).n50, n50Of([dep, pres]))
    const without = read(bytes, { 'table.columns': 'no' })
    close(without.n50, n50Of([dep]))
    expect(without.said.join('\n')).toMatch(/numbers without headings/)
  })
})

describe('zero flow', () => {
  it.each([
    ['in one text', [[`Zero: ${dep.before} Pa before, ${dep.after} Pa after`]]],
    ['in two cells with words', [['Zero', `${dep.before} before`, `${dep.after} after`]]],
    ['in one cell with a stroke', [['Zero flow before/after (Pa)', `${dep.before} / ${dep.after}`]]],
    ['without a word for before or after', [['Zero flow (Pa)', dep.before, dep.after]]],
  ] as [string, Rows][])('%s is read', async (_, rows) => {
    const { n50, asked } = read(await sheetOfForm([['Depressurisation'], ...rows, HEADINGS, ...dep.readings]))
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
  })

  it('in one row below both tables goes to the table above each value', async () => {
    const bytes = await sheetOfForm([
      [null, 'Depressurisation', null, 'Pressurisation'],
      ['No', ...HEADINGS, ...HEADINGS],
      ...dep.readings.map((row, index) => [index + 1, ...row, ...(pres.readings[index] ?? [])]),
      [null],
      ['Zero flow before (Pa)', dep.before, null, pres.before],
      ['Zero flow after (Pa)', dep.after, null, pres.after],
      ['n', 0.65, null, 0.66],
    ])
    close(read(bytes).n50, n50Of([dep, pres]))
  })
})

it('asks what flows are flows of where the log speaks of a standard state', async () => {
  const bytes = await sheetOfForm([
    ['Depressurisation'],
    ...zeroRows(dep),
    ['Pressure (Pa)', 'Normvolumenstrom (m³/h)'],
    ...dep.readings,
  ])
  expect(read(bytes).asked).toEqual(['flowStatedAt'])
  expect(read(bytes, { flowStatedAt: 'device air' }).record?.runs[0]?.flowStatedAt).toBe('device air')
  close(read(bytes, { flowStatedAt: 'device air' }).n50, n50Of([dep]))
})

it('converts flows that are for air at 0 °C to air at 20 °C', async () => {
  const bytes = await sheetOfForm([
    ['Depressurisation'],
    ...zeroRows(dep),
    ['Pressure (Pa)', 'Volume flow (Nm³/h)'],
    ...dep.readings,
  ])
  const { record, asked, said } = read(bytes, { flowStatedAt: 'normal air' })
  expect(asked).toEqual([])
  // An ideal gas at one pressure: 293.15 K to 273.15 K.
  const flows = record?.runs[0]?.readings.map(({ flow_m3_h }) => flow_m3_h ?? 0)
  expect(flows).toEqual(dep.readings.map(([, flow]) => expect.closeTo((flow * 293.15) / 273.15, 6)))
  expect(record?.runs[0]?.flowStatedAt).toBe('reference air')
  expect(said).toContain(
    'The flows are for air at 0 °C, as you answered. They were multiplied by 1.0732, so that they are for air at 20 °C.',
  )
})

it('reads the mean of samples of each station, and does not add the samples up as fans', async () => {
  const bytes = await sheetOfForm([
    ['Depressurisation'],
    ...zeroRows(dep),
    ['P1 (Pa)', 'P2 (Pa)', 'P mean (Pa)', 'Q1 (m³/h)', 'Q2 (m³/h)', 'Q mean (m³/h)'],
    ...dep.readings.map(([p, q]) => [p - 0.3, p + 0.3, p, q - 4, q + 4, q]),
  ])
  close(read(bytes).n50, n50Of([dep]))
})

it('takes the direction that is ticked', async () => {
  const bytes = await sheetOfForm([
    ['Depressurisation', null, 'Pressurisation', 'x'],
    ...zeroRows(pres),
    HEADINGS,
    ...pres.readings,
  ])
  const { record, n50 } = read(bytes)
  expect(record?.runs.map(({ direction }) => direction)).toEqual(['pressurisation'])
  close(n50, n50Of([pres]))
})

it('reads an export of names and values with a table below', () => {
  const lines = [
    'Date=2026-04-22',
    `Volume_m3=${HOUSE.volume_m3}`,
    `T_in_C=${HOUSE.indoor_C}`,
    `T_out_C=${HOUSE.outdoor_C}`,
    `P_atm_hPa=${HOUSE.barometer_Pa / 100}`,
    'Mode=Pressurization',
    `Baseline_pre_Pa=${pres.before}`,
    `Baseline_post_Pa=${pres.after}`,
    '',
    'Point,Pressure_Pa,Flow_m3_h',
    ...pres.readings.map(([p, q], index) => `${index + 1},${p},${q}`),
  ]
  const { n50, asked } = read(new TextEncoder().encode(lines.join('\n')), {}, 'export.csv')
  expect(asked).toEqual([])
  close(n50, n50Of([pres]))
})

it.each([
  '22 de abril de 2026',
  '22 aprile 2026',
  '22 kwietnia 2026',
  '22. dubna 2026',
  '22.04.26',
  '22/04/26',
])('takes %s for a day without asking', async (date) => {
  const rows: Rows = FORM.map((row) => (row[0] === 'Date' ? ['Date', date] : row))
  const bytes = await book({
    Test: [...rows, [null], ['Depressurisation'], ...zeroRows(dep), HEADINGS, ...dep.readings],
  })
  const { record, asked } = read(bytes)
  expect(asked).toEqual([])
  expect(record?.test.date).toBe('2026-04-22')
})
