import { describe, expect, it } from 'vitest'
import type { Rows } from '../support/book'
import { closeTo, dep, HEADINGS, n50Of, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: what is written into the sheet, and the independent fit of ./house.
const close = closeTo(0.002)
const SLIPPED = 3

const logWith = (change: (reading: [number, number]) => [number, number]) =>
  sheetOfForm(
    [dep, pres].flatMap(
      (run): Rows => [
        [run === dep ? 'Depressurisation' : 'Pressurisation'],
        ...zeroRows(run),
        HEADINGS,
        ...run.readings.map((reading, index) =>
          run === dep && index === SLIPPED ? change(reading) : reading,
        ),
        [null],
      ],
    ),
  )
const without = { ...dep, readings: dep.readings.filter((_, index) => index !== SLIPPED) }

const SLIPS: [string, (reading: [number, number]) => [number, number], string][] = [
  ['pressure ten times too large', ([p, q]) => [Math.round(p * 10), q], 'The pressure is about ten times'],
  ['pressure ten times too small', ([p, q]) => [p / 10, q], 'The pressure is about a tenth of'],
  ['flow ten times too large', ([p, q]) => [p, q * 10], 'The air flow is about ten times'],
  ['flow ten times too small', ([p, q]) => [p, q / 10], 'The air flow is about a tenth of'],
]

describe('a decimal point in the wrong place', () => {
  for (const [name, change, words] of SLIPS)
    it(`${name}: asked, and left out as answered`, async () => {
      const bytes = await logWith(change)
      const { asked, texts, said } = read(bytes)
      expect(asked).toEqual(['readings.remarked'])
      expect(texts[0]).toContain(words)
      expect(texts[0]).toContain('A15')
      // Nothing was answered yet.
      expect(said.filter((message) => message.includes('as you answered'))).toEqual([])
      close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of([without, pres]))
    })

  it('counts where the answer says so, and that is said', async () => {
    const bytes = await logWith(([p, q]) => [Math.round(p * 10), q])
    const { asked, said, record } = read(bytes, { 'readings.remarked': 'read' })
    expect(asked).toEqual([])
    expect(said.some((message) => message.startsWith('The reading was used, as you answered'))).toBe(true)
    expect(record?.runs[0]?.readings).toHaveLength(dep.readings.length)
  })

  it('two of them: both are asked about, and both are left out as answered', async () => {
    const slipped = new Set([SLIPPED, SLIPPED + 3])
    const bytes = await sheetOfForm(
      [dep, pres].flatMap(
        (run): Rows => [
          [run === dep ? 'Depressurisation' : 'Pressurisation'],
          ...zeroRows(run),
          HEADINGS,
          ...run.readings.map(([pressure, flow], index): [number, number] =>
            run === dep && slipped.has(index) ? [pressure, flow / 10] : [pressure, flow],
          ),
          [null],
        ],
      ),
    )
    const { asked, texts } = read(bytes)
    expect(asked).toEqual(['readings.remarked'])
    expect(texts[0]).toContain('A15 and A18 count? The air flow is about a tenth of')
    const others = { ...dep, readings: dep.readings.filter((_, index) => !slipped.has(index)) }
    close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of([others, pres]))
  })

  it('three of eight: all are asked about, and left out as answered', async () => {
    const slipped = new Set([1, SLIPPED, 5])
    const bytes = await sheetOfForm(
      [dep, pres].flatMap(
        (run): Rows => [
          [run === dep ? 'Depressurisation' : 'Pressurisation'],
          ...zeroRows(run),
          HEADINGS,
          ...run.readings.map(([pressure, flow], index): [number, number] =>
            run === dep && slipped.has(index) ? [pressure, flow * 10] : [pressure, flow],
          ),
          [null],
        ],
      ),
    )
    const { asked, texts } = read(bytes)
    expect(asked).toEqual(['readings.remarked'])
    expect(texts[0]).toContain('A13, A15 and A17 count? The air flow is about ten times')
    const others = { ...dep, readings: dep.readings.filter((_, index) => !slipped.has(index)) }
    close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of([others, pres]))
  })

  it('readings that scatter by a third are no such slip', async () => {
    const bytes = await logWith(([p, q]) => [p, Number((q * 1.33).toFixed(1))])
    expect(read(bytes).asked).toEqual([])
  })
})
