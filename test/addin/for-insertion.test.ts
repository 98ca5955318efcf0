import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { forInsertion } from '../../addin/src/worker/for-insertion.js'
import { compareCached } from '../support/formula-cells.js'

const record = parseRecord(
  JSON.parse(readFileSync(fileURLToPath(new URL('../demo/demo-record.json', import.meta.url)), 'utf8')),
)

describe('a summary made fit to be inserted', () => {
  it('takes free sheet names, refers to them everywhere, has no workbook-level names, and still recalculates', async () => {
    const bytes = await writeSummaryWorkbook(record)
    const fitted = forInsertion(bytes, ['Log', 'Summary', 'working'])
    expect([...fitted.renamed].slice(0, 4)).toEqual([
      ['Summary', 'Summary (2)'],
      ['Report', 'Report'],
      ['Readings', 'Readings'],
      ['Working', 'Working (2)'],
    ])
    const book = new ExcelJS.Workbook()
    await book.xlsx.load(fitted.bytes.slice().buffer)
    expect(book.worksheets.map(({ name }) => name)).toContain('Working (2)')
    const parts = unzipSync(fitted.bytes)
    const workbook = strFromU8(parts['xl/workbook.xml'] ?? new Uint8Array())
    expect(workbook).not.toMatch(/<definedName\s(?![^>]*localSheetId)/)
    expect(workbook).toContain("'Working (2)'!$3:$3")
    expect(workbook).not.toMatch(/Working(&apos;|')?!/)
    for (const [path, content] of Object.entries(parts))
      if (/(sheet\d|chart\d)\.xml$/.test(path))
        expect(strFromU8(content)).not.toMatch(/<(c:)?f>[^<]*(?<![\w'])'?Working'?!/)
    expect(await compareCached(fitted.bytes, { relative: 1e-9, absolute: 1e-12 })).toEqual([])
  })

  it('changes no word in a cell', async () => {
    const noted = parseRecord({ ...record, test: { ...record.test, notes: 'see Working! and Summary!A1' } })
    const fitted = forInsertion(await writeSummaryWorkbook(noted), ['Working', 'Summary'])
    const texts = Object.entries(unzipSync(fitted.bytes)).map(([, content]) => strFromU8(content))
    expect(texts.some((text) => text.includes('see Working! and Summary!A1'))).toBe(true)
  })
})
