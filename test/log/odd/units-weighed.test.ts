import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { closeTo, dep, HEADINGS, HOUSE, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: a leakage curve written in house.ts and an independent least-squares fit; nothing of it comes from the reader.
const close = closeTo(0.0008)
const truth = n50Of([dep, pres])
const L_S = 3.6

const blocks = (first: string, second: string, factors: readonly [number, number] = [1, 1]): Rows => [
  ['Depressurisation'],
  ...zeroRows(dep),
  ['Pressure (Pa)', first],
  ...dep.readings.map(([pressure, flow]) => [pressure, flow * factors[0]]),
  [null],
  ['Pressurisation'],
  ...zeroRows(pres),
  ['Pressure (Pa)', second],
  ...pres.readings.map(([pressure, flow]) => [pressure, flow * factors[1]]),
]

describe('units of flows that headings state', () => {
  it('are asked about where the two runs agree only in one of them', async () => {
    const bytes = await sheetOfForm(blocks('Flow (l/s)', 'Flow (m³/h)'))
    const { asked, choices, n50 } = read(bytes)
    expect([asked, choices, n50]).toEqual([['flow.unit'], ['l/s', 'm3/h', 'as headed'], undefined])
    close(read(bytes, { 'flow.unit': 'm3/h' }).n50, truth)
    close(read(bytes, { 'flow.unit': 'L/s' }).n50, truth * L_S)
    expect(read(bytes, { 'flow.unit': 'as headed' }).n50).toBeGreaterThan(2 * truth)
    expect(read(bytes, { 'flow.unit': 'buckets' }).problems.join()).toMatch(/"buckets" is not a unit of flow/)
  })

  it('are taken as they are where the two runs agree with them', async () => {
    const { asked, n50 } = read(await sheetOfForm(blocks('Flow (l/s)', 'Flow (m³/h)', [1 / L_S, 1])))
    expect(asked).toEqual([])
    close(n50, truth)
  })

  it("are asked about where the log's own result fits another unit", async () => {
    const rows = [...blocks('Flow (l/s)', 'Flow (l/s)'), [null], ['n50 (1/h)', Number(truth.toFixed(2))]]
    const bytes = await sheetOfForm(rows)
    expect(read(bytes).texts).toEqual([
      `The flows are headed l/s, but the result "n50 (1/h)" (${truth.toFixed(2)} in B34) fits only if they are in m³/h. In which unit are the flows?`,
    ])
    close(read(bytes, { 'flow.unit': 'm3/h' }).n50, truth)
    close(read(bytes, { 'flow.unit': 'as headed' }).n50, truth * L_S)
    const stated = await sheetOfForm([
      ...blocks('Flow (m³/h)', 'Flow (m³/h)'),
      ['Limit for n50 (1/h)', truth * L_S],
    ])
    close(read(stated).n50, truth)
  })

  it('are asked about where no house leaks so much', async () => {
    const bytes = await sheetOfForm(blocks('Flow (m³/min)', 'Flow (m³/min)'))
    const { asked, texts, choices } = read(bytes)
    expect(asked).toEqual(['flow.unit'])
    expect(texts[0]).toContain('The flows are headed m³/min. In that unit, the air change rate at 50 Pa is')
    expect(choices).toContain('m3/h')
    close(read(bytes, { 'flow.unit': 'm3/h' }).n50, truth)
  })
})

describe('a heading that was lost', () => {
  const lost = (first: Rows[number], second: Rows[number]): Rows => [
    ['Depressurisation'],
    first,
    ...dep.readings,
    [null],
    ['Pressurisation'],
    second,
    ...pres.readings,
    [null],
    ['Zero flow', 'before', 'after'],
    ['Depressurisation', dep.before, dep.after],
    ['Pressurisation', pres.before, pres.after],
  ]

  it.each([
    ['over the flows of the second run', lost(HEADINGS, ['Pressure (Pa)', null])],
    ['over the flows of the first run', lost(['Pressure (Pa)', null], HEADINGS)],
    ['over the pressures, right below the direction', lost([null, 'Flow (m³/h)'], HEADINGS)],
    ['of which an unknown word is left', lost(['Pressure (Pa)', 'V'], HEADINGS)],
  ])('%s: the run is asked about, not dropped', async (_, rows) => {
    const bytes = await sheetOfForm(rows)
    expect(read(bytes).asked).toContain('table.columns')
    close(read(bytes, { 'table.columns': 'yes' }).n50, truth)
  })

  it.each([
    ['flows', ['Pressure (Pa)', 'Flow (m³/h)', null, 'Pressure (Pa)', null]],
    ['pressures', ['Pressure (Pa)', 'Flow (m³/h)', null, null, 'Flow (m³/h)']],
  ])('over the %s of a block beside the other', async (_, headings) => {
    const bytes = await sheetOfForm([
      ['Zero flow', 'before', 'after'],
      ['Depressurisation', dep.before, dep.after],
      ['Pressurisation', pres.before, pres.after],
      [null],
      ['Depressurisation', null, null, 'Pressurisation'],
      headings,
      ...dep.readings.map((reading, index) => [...reading, null, ...(pres.readings[index] ?? [])]),
    ])
    expect(read(bytes).asked).toContain('table.columns')
    close(read(bytes, { 'table.columns': 'yes' }).n50, truth)
  })

  it('"all flows in l/s" some lines above says nothing of the pressures', async () => {
    const bytes = await sheetOfForm([
      ['Zero flow', 'before', 'after'],
      ['Depressurisation', dep.before, dep.after],
      ['Pressurisation', pres.before, pres.after],
      [null],
      ['All flows in l/s'],
      ['Depressurisation'],
      ['Pressure', 'Flow'],
      ...dep.readings.map(([pressure, flow]) => [pressure, flow / L_S]),
      ['Pressurisation'],
      ['Pressure', 'Flow'],
      ...pres.readings.map(([pressure, flow]) => [pressure, flow / L_S]),
    ])
    close(read(bytes).n50, truth)
  })
})

describe('a result below the readings', () => {
  it('under the column of directions is compared, and no reading', async () => {
    const wrong = Number((1.4 * truth).toFixed(3))
    const bytes = await sheetOfForm([
      ...zeroRows(dep),
      [null],
      ['Direction', 'Pressure (Pa)', 'Flow (m³/h)'],
      ...dep.readings.map((reading) => ['Depressurisation', ...reading]),
      [null],
      ['n50', wrong],
    ])
    expect(read(bytes).asked).toEqual(['building.volume_m3'])
    const { said, n50 } = read(bytes, { 'building.volume_m3': `${HOUSE.volume_m3} m3` })
    close(n50, n50Of([dep]))
    expect(said.join('\n')).toContain(`The log's own "n50" is ${wrong.toPrecision(3)}, but`)
  })
})
