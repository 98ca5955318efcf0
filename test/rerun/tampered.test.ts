import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { type StoredCell, Tamperer, tampers, withNumber, withText } from '../archive/tamper'

const kinds = Object.keys(tampers)
let book: Tamperer
let cells: StoredCell[]

beforeAll(async () => {
  const record = parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))
  book = new Tamperer(await writeSummaryWorkbook(record))
  cells = book.cells()
})

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'archived.xlsx')
  if (!test) throw new Error('no test came back')
  return test
}

const at = (address: string): StoredCell => {
  const found = cells.find((cell) => `${cell.sheet}!${cell.address}` === address)
  if (!found) throw new Error(`the workbook has no cell ${address}`)
  return found
}

describe('one tampered cell of an archived summary workbook', () => {
  it('is found, whichever cell of any sheet and whatever was done to it', async () => {
    let tried = 0
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: cells.length - 1 }),
        fc.constantFrom(...kinds),
        async (index, kind) => {
          const cell = cells[index]
          const xml = cell && tampers[kind]?.(cell, book)
          fc.pre(cell !== undefined && xml !== undefined)
          const test = await rerun(book.with(cell, xml))
          tried += 1
          expect(test.outcome, `${cell.sheet}!${cell.address}: ${kind}`).not.toBe('exactly as issued')
          expect(test.outcome).not.toBe('agrees')
          if (cell.sheet === 'Record') return
          const named = test.differences.filter(({ rounding }) => !rounding).map((one) => one.cell)
          expect(named).toEqual(named.map(() => `${cell.sheet}!${cell.address}`))
          expect(named.length).toBeGreaterThan(0)
        },
      ),
      { numRuns: 16 },
    )
    expect(tried).toBeGreaterThan(8)
  }, 300_000)

  it.each(kinds)('is found in every single cell that can be tampered with: %s', async (kind) => {
    // All cells at once: the comparison goes cell by cell, so each must be named for itself.
    // Not the readings: then the other sheets' cells may hold just what follows from the changed ones.
    const sheets = ['Summary', 'Working', 'Check']
    const tampered = cells.flatMap((cell) => {
      const xml = sheets.includes(cell.sheet) ? tampers[kind]?.(cell, book) : undefined
      return xml === undefined ? [] : [{ cell, xml }]
    })
    const test = await rerun(book.withAll(tampered))
    const named = new Set(test.differences.filter(({ rounding }) => !rounding).map(({ cell }) => cell))
    const missed = tampered
      .map(({ cell }) => `${cell.sheet}!${cell.address}`)
      .filter((cell) => !named.has(cell))
    expect(missed).toEqual([])
    expect(tampered.length).toBeGreaterThan(100)
  })

  it('is told as a changed input where it holds a logged value, with its field', async () => {
    const reading = cells.find((cell) => cell.sheet === 'Readings' && cell.xml.includes('<v>-69.2</v>'))
    if (!reading) throw new Error('the reading is not where it was')
    const test = await rerun(book.with(reading, withNumber(reading, -68.2)))
    expect(test.outcome).toBe('inputs changed after issue')
    expect(test.differences).toMatchObject([
      {
        kind: 'input',
        path: 'runs[0].readings[0].pressure_Pa',
        recorded: -68.2,
        expected: -69.2,
        rounding: false,
      },
    ])
    expect(test.differences[0]?.change).toBeCloseTo(1, 12)
  })

  it('is one line with the figures that follow under it, where a field of the record itself was altered', async () => {
    const [record] = cells.filter(
      ({ sheet, xml }) =>
        sheet === 'Record' && /"volume_m3/.test(book.sharedText(xml)?.replaceAll('&quot;', '"') ?? ''),
    )
    if (!record) throw new Error('the record is not where it was')
    const text = (book.sharedText(record.xml) ?? '')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
    const test = await rerun(
      book.with(record, withText(record, text.replace('"volume_m3":243.6', '"volume_m3":263.6'))),
    )
    expect(test.outcome).toBe('inputs changed after issue')
    expect(test.differences).toHaveLength(1)
    const [volume] = test.differences
    expect(volume).toMatchObject({ kind: 'input', expected: 243.6, recorded: 263.6, unit: 'm³' })
    expect(volume?.label).toMatch(/volume/)
    const n50 = volume?.follows?.find(({ label }) => label === 'result: n50')
    // A rate per volume goes down as the volume goes up.
    expect(Number(n50?.expected) / Number(n50?.recorded)).toBeCloseTo(243.6 / 263.6, 9)
    expect(n50?.working).toMatch(/n_pr = /)
  })

  it('is found in a cell that should be empty', async () => {
    const empty = at('Summary!A1')
    const test = await rerun(book.with(empty, `${empty.xml}<c r="B1"><v>1</v></c>`))
    expect(test.differences).toMatchObject([{ cell: 'Summary!B1', recorded: 1, expected: null }])
  })
})
