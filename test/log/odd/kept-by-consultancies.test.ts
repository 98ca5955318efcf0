import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, titleOf, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const sheet = (rows: Rows) => book({ Test: [...FORM, [null], ...rows] })
const turned = (run: OddRun): OddRun => ({
  ...run,
  before: -run.before as OddRun['before'],
  after: -run.after as OddRun['after'],
  readings: run.readings.map(([pressure, flow]) => [-pressure, flow]),
})
const block = (run: OddRun): Rows => [titleOf(run), ...zeroRows(run), HEADINGS, ...run.readings, [null]]

describe('the sign of the pressures as the log states it', () => {
  it.each(['Pressure: outdoor minus indoor', 'Sign: outside - inside', 'Druckdifferenz: außen minus innen'])(
    '%s: the signs are turned, and nothing is asked',
    async (words) => {
      const { asked, n50, record } = read(await sheet([[words], ...RUNS.map(turned).flatMap(block)]))
      expect(asked).toEqual([])
      close(n50, n50Of(RUNS))
      expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([dep.before])
    },
  )

  it('holds for one run alone, of either direction', async () => {
    for (const run of RUNS) {
      const { asked, record } = read(await sheet([['Pressure: outdoor minus indoor'], ...block(turned(run))]))
      expect(asked).toEqual([])
      expect(record?.runs[0]?.direction).toBe(run.direction)
      expect(record?.runs[0]?.zeroFlowBefore_Pa).toEqual([run.before])
    }
  })

  it('is cautioned about where the readings have the other sign', async () => {
    const { n50, said } = read(await sheet([['Pressure: outdoor minus indoor'], ...RUNS.flatMap(block)]))
    close(n50, n50Of(RUNS))
    expect(said.join('\n')).toMatch(/says that pressures are outside minus inside, but/)
  })
})

describe('headings once over several runs', () => {
  const section = (run: OddRun, title: string): Rows => [
    [title],
    ['Zero flow before (Pa)', run.before],
    ...run.readings.slice(0, 4),
    ['door opened'],
    ...run.readings.slice(4),
    ['Zero flow after (Pa)', run.after],
  ]

  it.each([
    ['Depressurisation', 'Pressurisation'],
    ['— UNTERDRUCK —', '— Überdruck —'],
  ])('with %s and %s as lines of the table', async (...titles) => {
    const rows = RUNS.flatMap((run, index) => section(run, titles[index] as string))
    const { asked, n50, record } = read(await sheet([HEADINGS, ...rows]))
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
    expect(record?.runs.map(({ direction }) => direction)).toEqual(RUNS.map(({ direction }) => direction))
  })

  it('with lists of zero flow in those lines', async () => {
    const list = (value: number) => [-0.3, 0.1, 0.2].map((off) => Number((value + off).toFixed(1)))
    const rows = RUNS.flatMap(
      (run): Rows => [
        titleOf(run),
        ['Zero flow before (Pa)', ...list(run.before)],
        ...run.readings,
        ['Zero flow after (Pa)', ...list(run.after)],
      ],
    )
    const { asked, record } = read(await sheet([HEADINGS, ...rows]))
    expect(asked).toEqual([])
    expect(record?.runs.map((run) => run.zeroFlowBefore_Pa)).toEqual(RUNS.map(({ before }) => list(before)))
    expect(record?.runs.map((run) => run.zeroFlowAfter_Pa)).toEqual(RUNS.map(({ after }) => list(after)))
  })
})

describe('rejected readings and codes beside them', () => {
  it('a comment that begins with the refusal leaves its reading out', async () => {
    const rows: Rows = [titleOf(dep), ...zeroRows(dep), HEADINGS, [-44, 999], ...dep.readings]
    const at = FORM.length + 1 + rows.findIndex(([first]) => first === -44) + 1
    const bytes = await book({ Test: [...FORM, [null], ...rows] }, (workbook) => {
      const cell = workbook.getWorksheet('Test')?.getCell(at, 1)
      if (cell) cell.note = 'rejected: gust'
    })
    const { asked, n50, said } = read(bytes)
    expect(asked).toEqual([])
    close(n50, n50Of([dep]))
    expect(said.join('\n')).toMatch(/left out: the comment in .* says "rejected: gust"/)
  })

  it('rings in letters under a heading that the reader does not know end no table', async () => {
    const withRing = dep.readings.map(([p, q], index) => [p, q, 'ABC'[index % 3] as string])
    const rows: Rows = [
      titleOf(dep),
      ...zeroRows(dep),
      [...HEADINGS, 'Xyzzy'],
      ...withRing.slice(0, 2),
      [null],
      ...withRing.slice(2),
    ]
    const { asked, record } = read(await sheet(rows))
    expect(asked).toEqual([])
    expect(record?.runs[0]?.readings).toHaveLength(8)
  })
})

describe('words that mean another thing here', () => {
  it('a volume of air tested is no day, whatever its size', async () => {
    const form: Rows = FORM.map(([label, value]) =>
      label === 'Internal volume (m³)'
        ? ['Volume of air tested (ft³)', 33040]
        : [label ?? null, value ?? null],
    )
    const { asked, record } = read(await book({ Test: [...form, [null], ...RUNS.flatMap(block)] }))
    expect(asked).toEqual([])
    // 1 ft³ = 0.028316846592 m³. Source: NIST SP 811, appendix B.8.
    expect(record?.building.volume_m3).toBeCloseTo(33040 * 0.028316846592, 6)
    expect(record?.test.date).toBe('2026-04-22')
  })

  it.each([[['gust'], [null]], [['gust']]] as Rows[])(
    'a remark before a blank line or a struck reading ends no table',
    async (...between) => {
      const rows: Rows = [
        titleOf(dep),
        ...zeroRows(dep),
        HEADINGS,
        ...dep.readings.slice(0, 3),
        ...between,
        ...dep.readings.slice(3),
      ]
      const bytes = await book({ Test: [...FORM, [null], ...rows] }, (workbook) => {
        // The reading behind the remark alone is struck through.
        if (between.length === 1)
          for (const column of [1, 2]) {
            const cell = workbook.getWorksheet('Test')?.getCell(FORM.length + 1 + 8 + 1, column)
            if (cell) cell.font = { strike: true }
          }
      })
      const { asked, record } = read(bytes)
      expect(asked).toEqual([])
      expect(record?.runs[0]?.readings).toHaveLength(between.length === 1 ? 7 : 8)
    },
  )

  it('remarks of the block beside name no row of this one, and lists of zero flow below are no readings', async () => {
    const [left, right] = RUNS.map(({ readings }) => readings) as [OddRun['readings'], OddRun['readings']]
    const list = [0.1, -0.2, 0.3, 0.2, -0.1, 0.4]
    const rows: Rows = [
      ['Depressurisation', null, null, 'Pressurisation'],
      [...HEADINGS, 'Remarks', ...HEADINGS],
      ...left.map(([p, q], index) => [p, q, index === 2 ? 'discard' : null, ...(right[index] ?? [])]),
      [null],
      ['Depressurisation: zero flow before (Pa)', ...list],
      ['Depressurisation: zero flow after (Pa)', ...list],
      ['Pressurisation: zero flow before (Pa)', ...list],
      ['Pressurisation: zero flow after (Pa)', ...list],
    ]
    const { asked, record } = read(await sheet(rows))
    expect(asked).toEqual([])
    expect(record?.runs.map(({ readings }) => readings.length)).toEqual([7, 8])
    expect(record?.runs.map(({ zeroFlowAfter_Pa }) => zeroFlowAfter_Pa)).toEqual([list, list])
  })

  it('the same log twice on a sheet is one test', async () => {
    const whole: Rows = [...FORM, [null], ...RUNS.flatMap(block)]
    const { tests, n50 } = read(await book({ Test: [...whole, [null], [null], ...whole] }))
    expect(tests).toBe(1)
    close(n50, n50Of(RUNS))
  })

  it('units in every cell go before a title over the heading', async () => {
    const withUnits = (run: OddRun): Rows => [
      [run === dep ? 'Onderdruk' : 'Overdruk', null],
      ['Drukverschil', 'Volumestroom'],
      ...run.readings.map(([p, q]) => [`${p} Pa`, `${q} m³/h`]),
      [null],
    ]
    const { asked, record } = read(await sheet(RUNS.flatMap(withUnits)))
    expect(asked.filter((path) => !/zeroFlow/.test(path))).toEqual([])
    expect(record?.runs.map(({ readings }) => readings[0]?.flow_m3_h)).toEqual(
      RUNS.map(({ readings }) => readings[0]?.[1]),
    )
  })
})
