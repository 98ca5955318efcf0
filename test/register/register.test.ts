import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { makeRegister, type Register, readLines } from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { type Invented, inventedRecord } from '../archive/invented-record'

const encoder = new TextEncoder()

/** A register of invented tests, each read from its workbook. */
async function registerOf(tests: readonly TestRecord[], options: { month?: string } = {}): Promise<Register> {
  const read = await Promise.all(
    tests.map(async (record, i) => readLines(await writeSummaryWorkbook(record), `archive/${i + 1}.xlsx`)),
  )
  return makeRegister(
    read.flatMap(({ lines }) => lines),
    read.flatMap(({ leftOut }) => leftOut),
    { asOf: '2026-10-31', ...options },
  )
}

const house = (plot: string, more: Invented) => ({ site: 'Invented Green', plot, ...more })

describe('the register of a folder of workbooks', () => {
  it('has one row per test, with the figures of its single evaluation', async () => {
    const records = [1, 2, 3, 4, 5].map((seed) => inventedRecord(seed))
    const { rows, leftOut } = await registerOf(records)
    expect(leftOut).toEqual([])
    expect(rows).toHaveLength(5)
    for (const record of records) {
      const row = rows.find(({ testNumber }) => testNumber === record.test.id)
      const { results, verdict, findings } = evaluate(record)
      expect(row?.results).toEqual({
        n50: results.n50?.value,
        qE50: results.qE50?.value,
        qF50: results.qF50?.value,
        q50: results.q50.value,
        q4: results.q4.value,
        ela4: results.ela4.value,
      })
      expect(row?.outcome).toBe(verdict.outcome)
      expect(row?.judged?.margin).toBe(verdict.margin)
      expect(row?.findings).toHaveLength(findings.length)
    }
  })

  it('recognises the same test in two files, and counts it once', async () => {
    const record = inventedRecord(1)
    const { rows, overall } = await registerOf([record, inventedRecord(2), record])
    expect(rows.map(({ role }) => role).sort()).toEqual(['duplicate', 'first test', 'first test'])
    const double = rows.find(({ role }) => role === 'duplicate')
    expect(double?.counts).toBe(false)
    expect(rows[(double?.of ?? 0) - 1]?.recordDigest).toBe(double?.recordDigest)
    expect(overall).toMatchObject({ tests: 3, counting: 2, firstTests: 2 })
  })

  it('pairs a retest with the test it repeats, which no longer counts', async () => {
    const { rows, overall, toRetest } = await registerOf([
      inventedRecord(11, house('Plot 1', { stage: 'retest', date: '2026-10-20', n50: 0.5 })),
      inventedRecord(12, house('Plot 1', { stage: 'acceptance', date: '2026-10-05', n50: 0.9 })),
      inventedRecord(13, house('Plot 2', { stage: 'acceptance', date: '2026-10-06', n50: 0.9 })),
      inventedRecord(14, house('Plot 3', { stage: 'fabric', date: '2026-10-07', n50: 0.4 })),
    ])
    expect(
      rows.map(({ building, role, of, supersededBy, counts }) => [building, role, of, supersededBy, counts]),
    ).toEqual([
      ['Plot 1', 'first test', undefined, 2, false],
      ['Plot 1', 'repeat', 1, undefined, true],
      ['Plot 2', 'first test', undefined, undefined, true],
      ['Plot 3', 'first test', undefined, undefined, true],
    ])
    expect(toRetest).toEqual([3])
    // Of three first tests one met its target; the retest does not better that rate.
    expect(overall).toMatchObject({ tests: 4, counting: 3, meets: 2, misses: 1, firstTests: 3, firstMet: 1 })
    expect(overall.firstPassRate).toBeCloseTo(1 / 3, 12)
  })

  it('takes a second test of the same stage as a repeat, and keeps stages apart', async () => {
    const { rows } = await registerOf([
      inventedRecord(21, house('Plot 9', { stage: 'fabric', date: '2026-10-01' })),
      inventedRecord(22, house('Plot 9', { stage: 'acceptance', date: '2026-10-08' })),
      inventedRecord(23, house('Plot 9', { stage: 'acceptance', date: '2026-10-15' })),
    ])
    expect(rows.map(({ role, of }) => [role, of])).toEqual([
      ['first test', undefined],
      ['first test', undefined],
      ['repeat', 2],
    ])
  })

  it('orders plots by their numbers and takes names without regard to capitals and spaces', async () => {
    const { rows, totals } = await registerOf([
      inventedRecord(31, { site: 'Invented Quay', plot: 'Plot 10' }),
      inventedRecord(32, { site: 'invented  quay', plot: 'Plot 9' }),
      inventedRecord(33, { site: 'INVENTED QUAY', plot: 'plot 10', stage: 'retest', date: '2026-10-30' }),
    ])
    expect(rows.map(({ building }) => building)).toEqual(['Plot 9', 'Plot 10', 'plot 10'])
    expect(rows[2]).toMatchObject({ role: 'repeat', of: 2 })
    expect(totals.site).toHaveLength(1)
    expect(totals.site[0]?.tests).toBe(3)
  })

  it('marks the same test number with other content', async () => {
    const { rows } = await registerOf([
      inventedRecord(41, house('Plot 4', { id: 'A-1', stage: 'acceptance', date: '2026-10-02' })),
      inventedRecord(42, house('Plot 4', { id: 'A-1', stage: 'acceptance', date: '2026-10-02' })),
    ])
    expect(rows[1]).toMatchObject({ role: 'repeat', of: 1 })
    expect(rows[1]?.remark).toMatch(/same test number/)
  })

  it('lists every file that could not be read, with the reason', async () => {
    const good = await writeSummaryWorkbook(inventedRecord(1))
    const files: [Uint8Array, string][] = [
      [good.slice(0, 5000), 'cut.xlsx'],
      [encoder.encode('no workbook'), 'text.xlsx'],
      [new Uint8Array(), 'empty.xlsx'],
    ]
    const read = files.map(([bytes, name]) => readLines(bytes, name))
    const register = makeRegister(
      [],
      read.flatMap(({ leftOut }) => leftOut),
      { asOf: '2026-10-31' },
    )
    expect(register.leftOut.map(({ file }) => file)).toEqual(['cut.xlsx', 'empty.xlsx', 'text.xlsx'])
    for (const { why } of register.leftOut) expect(why.length).toBeGreaterThan(10)
  })

  it('keeps to its month, lists the others, and still knows what a retest of the month repeats', async () => {
    const register = await registerOf(
      [
        inventedRecord(51, house('Plot 5', { stage: 'acceptance', date: '2026-09-20', n50: 0.9 })),
        inventedRecord(52, house('Plot 5', { stage: 'retest', date: '2026-10-02', n50: 0.5 })),
        inventedRecord(53, house('Plot 5', { stage: 'retest', date: '2026-11-02', n50: 0.4 })),
      ],
      { month: '2026-10' },
    )
    expect(register.rows).toHaveLength(1)
    expect(register.rows[0]).toMatchObject({ row: 1, role: 'repeat', counts: true })
    expect(register.rows[0]?.remark).toBe('repeats the test of 2026-09-20 in archive/1.xlsx')
    expect(register.leftOut.map(({ why }) => why)).toEqual([
      'tested on 2026-09-20, not in 2026-10',
      'tested on 2026-11-02, not in 2026-10',
    ])
  })

  it('lists calibrations that expire within 60 days or have, and no others', async () => {
    const { calibrations } = await registerOf([
      inventedRecord(61, house('A', {})),
      ...['2026-12-30', '2026-12-31', '2026-10-01'].map((due, i) => {
        const record = inventedRecord(62 + i, house(`B${i}`, {}))
        record.pressureGauge = { serial: `G-${i}`, calibrationDue: due }
        record.flowDevice = { ...record.flowDevice, serial: 'D-9', calibrationDue: '2027-09-01' }
        return record
      }),
    ])
    const gauges = calibrations.filter(
      ({ instrument, serial }) => instrument === 'pressure gauge' && serial?.startsWith('G-'),
    )
    expect(gauges.map(({ serial, days }) => [serial, days])).toEqual([
      ['G-2', -30],
      ['G-0', 60],
    ])
    expect(calibrations.some(({ serial }) => serial === 'D-9')).toBe(false)
  })
})

describe('a workbook that was edited after issue', () => {
  it('is in the register, and marked', async () => {
    const { Tamperer, withText } = await import('../archive/tamper')
    const book = new Tamperer(await writeSummaryWorkbook(inventedRecord(7)))
    const [cell] = book
      .cells()
      .filter(({ sheet, xml }) => sheet === 'Record' && book.sharedText(xml)?.includes('volume_m3'))
    if (!cell) throw new Error('the record is not where it was')
    const text = (book.sharedText(cell.xml) ?? '').replaceAll('&quot;', '"')
    const { lines } = readLines(
      book.with(cell, withText(cell, text.replace(/"volume_m3":[\d.]+/, '"volume_m3":999'))),
      'a.xlsx',
    )
    expect(lines[0]?.altered).toBe('the record was changed after issue')
  })
})
