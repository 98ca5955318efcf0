import type ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { book, type Rows, sheetOf } from '../support/book'
import { closeTo, dep, FORM, HEADINGS, n50Of, type OddRun, pres, read, sheetOfForm, zeroRows } from './house'

// Truth: the independent fit of ./house for what is written into each log.
const close = closeTo(0.002)
const RUNS = [dep, pres]
const titled = (run: OddRun, rows: Rows): Rows => [
  [run === dep ? 'Depressurisation' : 'Pressurisation'],
  ...zeroRows(run),
  HEADINGS,
  ...rows,
]
const first = dep.readings.slice(0, 3).map(([pressure, flow]) => [pressure, flow * 1.3])

describe('a remark between readings', () => {
  it('that the run was begun again makes the readings above it doubtful', async () => {
    const bytes = await sheetOfForm([
      ...titled(dep, [...first, ['back door came open, started again'], ...dep.readings]),
      [null],
      ...titled(pres, pres.readings),
    ])
    const { asked, texts } = read(bytes)
    expect(asked).toEqual(['readings.remarked'])
    expect(texts[0]).toContain('started again')
    close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of(RUNS))
  })

  it('does so in any words where the pressures begin again below it', async () => {
    const rows = titled(dep, [...first, ['kissa oli luukussa'], ...dep.readings])
    const { asked } = read(await sheetOfForm([...rows, [null], ...titled(pres, pres.readings)]))
    expect(asked).toEqual(['readings.remarked'])
  })

  it('that says no such thing is named', async () => {
    const rows = titled(dep, [...dep.readings.slice(0, 4), ['a bird sang'], ...dep.readings.slice(4)])
    const { asked, said, n50 } = read(await sheetOfForm([...rows, [null], ...titled(pres, pres.readings)]))
    expect(asked).toEqual([])
    expect(said.join()).toContain('a bird sang')
    close(n50, n50Of(RUNS))
  })
})

describe('a reading that is set aside', () => {
  const HEAD = FORM.length + 6

  it.each([
    ['written in red', (cell: ExcelJS.Cell) => (cell.font = { color: { argb: 'FFFF0000' } })],
    [
      'on yellow',
      (cell: ExcelJS.Cell) => {
        cell.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFFFFF00' } }
      },
    ],
    [
      'in an accent of the theme',
      (cell: ExcelJS.Cell) => (cell.font = { color: { theme: 5 } as ExcelJS.Color }),
    ],
  ])('%s is asked about', async (_, mark) => {
    const [one, ...rest] = dep.readings
    const wrong = [(one?.[0] ?? 0) * 1.03, (one?.[1] ?? 0) * 0.8]
    const bytes = await sheetOfForm(
      [...titled(dep, [one ?? [], wrong, ...rest]), [null], ...titled(pres, pres.readings)],
      (workbook) => {
        for (const column of [1, 2]) mark(sheetOf(workbook, 'Test').getCell(HEAD + 1, column))
      },
    )
    expect(read(bytes).asked).toEqual(['readings.grey'])
    close(read(bytes, { 'readings.grey': 'leave out' }).n50, n50Of(RUNS))
  })

  it('is not where a colour is that of a whole table', async () => {
    const { asked, n50 } = read(
      await sheetOfForm(
        [...titled(dep, dep.readings), [null], ...titled(pres, pres.readings)],
        (workbook) => {
          const sheet = sheetOf(workbook, 'Test')
          for (let row = HEAD; row < HEAD + dep.readings.length; row++)
            for (const column of [1, 2]) sheet.getCell(row, column).font = { color: { argb: 'FF0000FF' } }
        },
      ),
    )
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('by a word some blank columns behind is asked about', async () => {
    const [one, ...rest] = pres.readings
    const wrong = [41.2, 777, null, null, null, null, 'ungültig, Tür auf']
    const rows = titled(pres, [one ?? [], wrong, ...rest])
    const bytes = await sheetOfForm([...titled(dep, dep.readings), [null], ...rows])
    expect(read(bytes).texts.join()).toContain('ungültig')
    close(read(bytes, { 'readings.remarked': 'leave out' }).n50, n50Of(RUNS))
  })
})

describe('below the readings', () => {
  const meanOf = (run: OddRun, at: 0 | 1) =>
    run.readings.reduce((sum, reading) => sum + reading[at], 0) / run.readings.length

  it('a sum that nothing marks and a mean marked Ø behind it are none', async () => {
    const summed = (run: OddRun) => {
      const means = [meanOf(run, 0), meanOf(run, 1)]
      return titled(run, [...run.readings, means.map((mean) => mean * run.readings.length), [...means, 'Ø']])
    }
    const { asked, n50 } = read(await sheetOfForm([...summed(dep), [null], ...summed(pres)]))
    expect(asked).toEqual([])
    close(n50, n50Of(RUNS))
  })

  it('lines of noughts that were left over are no zero flow', async () => {
    const left = [0, 0]
    const rows = RUNS.flatMap((run): Rows => [...titled(run, [...run.readings, left, left, left]), [null]])
    const { asked, said, n50 } = read(await sheetOfForm(rows))
    expect(asked).toEqual([])
    expect(said.join()).toContain('nothing says that it is zero flow')
    close(n50, n50Of(RUNS))
  })
})

describe('values beside the readings', () => {
  it('flows outside what the log says of its fan are asked about', async () => {
    const inLitres = (run: OddRun) =>
      titled(
        run,
        run.readings.map(([pressure, flow]) => [pressure, flow / 3.6]),
      )
    const rows = [['Fan range: 250 – 2500 m³/h'], ...inLitres(dep), [null], ...inLitres(pres)]
    const bytes = await sheetOfForm(rows)
    expect(read(bytes).asked).toEqual(['flow.unit'])
    expect(read(bytes).texts.join()).toContain('250 – 2500 m³/h')
    close(read(bytes, { 'flow.unit': 'l/s' }).n50, n50Of(RUNS))
  })

  it('an area whose label says neither floor nor envelope is named', async () => {
    const rows = [
      ['Quillow (m²)', 123.4],
      ...titled(dep, dep.readings),
      [null],
      ...titled(pres, pres.readings),
    ]
    expect(read(await sheetOfForm(rows)).said.join()).toContain('Quillow')
  })

  it('an air pressure labelled by nothing but its unit is read', async () => {
    const form = FORM.map((row) => (row[0] === 'Barometer (hPa)' ? ['hPa', row[1] ?? null] : row))
    const { record } = read(
      await book({
        Test: [...form, ...titled(dep, dep.readings), [null], ...titled(pres, pres.readings)],
      }),
    )
    expect(record?.conditions.barometricPressure_Pa).toBe(100_840)
  })
})
