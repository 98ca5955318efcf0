import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { readSummaryWorkbook, writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import fc from 'fast-check'
import { strFromU8, unzipSync } from 'fflate'
import { beforeAll, describe, expect, it } from 'vitest'
import { toPdf } from '../support/libreoffice.js'
import { pdfPages } from '../support/pdf-pages.js'
import { runTool } from '../support/run-tool.js'

const demo = (): TestRecord => parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))

describe('the parts of the summary workbook', () => {
  let bytes: Uint8Array
  let parts: Record<string, string>
  beforeAll(async () => {
    bytes = await writeSummaryWorkbook(demo())
    parts = Object.fromEntries(
      Object.entries(unzipSync(bytes)).map(([name, data]) => [name, strFromU8(data)]),
    )
  })

  it('has the six sheets in the order of reading', async () => {
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes.slice().buffer)
    expect(workbook.worksheets.map(({ name }) => name)).toEqual([
      'Summary',
      'Report',
      'Readings',
      'Working',
      'Check',
      'Record',
    ])
  })

  it('names the main results in the XML, each a single cell of Working, and none looks like a cell address', () => {
    const names = [...(parts['xl/workbook.xml'] ?? '').matchAll(/<definedName name="([^"]+)"[^>]*>([^<]+)</g)]
    const own = names.filter(([, name]) => !name?.startsWith('_xlnm'))
    expect(own.map(([, name]) => name)).toEqual(
      expect.arrayContaining([
        'air_change_rate_50',
        'air_leakage_rate_50',
        'margin_to_target',
        'leakage_to_seal',
      ]),
    )
    for (const [, name = '', place] of own) {
      expect(place).toMatch(/^Working!\$[A-Z]+\$\d+$/)
      expect(name).not.toMatch(/^[A-Za-z]{1,3}\d+$/)
    }
  })

  it('refers by cell in every formula, never by name, and writes no number that is not finite', () => {
    for (const [name, xml] of Object.entries(parts)) {
      if (!name.startsWith('xl/worksheets/')) continue
      for (const [, formula = ''] of xml.matchAll(/<f>([^<]*)<\/f>/g)) expect(formula).not.toContain('air_')
      expect(xml).not.toMatch(/<v>(NaN|-?Infinity)<\/v>/)
    }
  })

  it('types no value on Summary: every number there is a formula', () => {
    const xml = parts['xl/worksheets/sheet1.xml'] ?? ''
    const numbers = [...xml.matchAll(/<c r="([A-Z]+\d+)"((?:[^>/]|\/(?!>))*)>(.*?)<\/c>/g)].filter(
      ([, , attributes = '', body = '']) => !/t="/.test(attributes) && body.includes('<v>'),
    )
    expect(numbers.length).toBeGreaterThan(20)
    for (const [, , , body] of numbers) expect(body).toContain('<f>')
  })

  it('carries a log–log chart with readings and line of both directions, the limit, and marks that the legend leaves out', () => {
    const chart = Object.entries(parts).find(([name]) => /^xl\/charts\/chart/.test(name))?.[1] ?? ''
    // Two directions with readings and line, the flow at the limit; axis labels and the line at 50 Pa are not in the legend.
    expect(chart.match(/<c:ser>/g)).toHaveLength(4 + 1 + 3)
    expect(chart.match(/<c:legendEntry>/g)).toHaveLength(3)
    for (const label of ['10', '20', '30', '50', '70', '100', 'limit 0.6 1/h'])
      expect(chart).toContain(`<a:t>${label}</a:t>`)
    expect(chart.match(/<c:logBase val="10"\/>/g)).toHaveLength(2)
    expect(chart).not.toContain('<c:errBars>')
  })

  it('protects Record without a password', () => {
    const xml = parts['xl/worksheets/sheet6.xml'] ?? ''
    expect(xml).toContain('<sheetProtection')
    expect(xml).not.toMatch(/<sheetProtection[^>]*(password|hashValue)=/)
  })

  it('names the building, tester and organisation in the document properties', () => {
    expect(parts['docProps/core.xml']).toContain('Airtightness test: House 7 (invented)')
    expect(parts['docProps/core.xml']).toContain('R. Example')
    expect(parts['docProps/app.xml']).toContain('Sample Test Office (invented)')
  })

  it('prints Summary on one A4 page', async () => {
    const pdf = await toPdf(bytes)
    const [first = ''] = await pdfPages(pdf, 'summary')
    const text = (page: number) =>
      runTool(
        'pdftotext',
        ['-f', `${page}`, '-l', `${page}`, join(dirname(first), 'workbook.pdf'), '-'],
        'poppler-utils',
      )
    expect(await text(1)).toContain('Airtightness test: summary')
    expect(await text(1)).toContain('Local codes and licensed practice decide')
    expect(await text(2)).toContain('Test report')
    expect(parts['xl/worksheets/sheet1.xml']).toMatch(/<pageSetup[^>]*paperSize="9"/)
    expect(parts['xl/worksheets/sheet1.xml']).toMatch(/fitToHeight="1"/)
  })

  it('is the same to the byte when written again', async () => {
    expect(Buffer.compare(Buffer.from(await writeSummaryWorkbook(demo())), Buffer.from(bytes))).toBe(0)
  })
})

const dangerous = [
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  '=HYPERLINK("http://x","y")',
  "'=1",
  '\t=1',
  '&P&D',
  '<v>1</v>',
  '_x0041_',
  '{=1}',
]

describe('text from users', () => {
  it.each(dangerous)('stays text in every cell: %j', async (text) => {
    const record = demo()
    record.building.name = `${text} `
    record.test.tester = text
    record.test.notes = text
    const workbook = new ExcelJS.Workbook()
    const bytes = await writeSummaryWorkbook(record)
    await workbook.xlsx.load(bytes.slice().buffer)
    for (const sheet of workbook.worksheets)
      sheet.eachRow((row) => {
        row.eachCell((cell) => {
          if (cell.type === ExcelJS.ValueType.Formula) expect(cell.formula).not.toContain('1+1')
          if (cell.type === ExcelJS.ValueType.Formula) expect(cell.formula).not.toContain('HYPERLINK')
          expect(cell.type).not.toBe(ExcelJS.ValueType.Hyperlink)
        })
      })
    expect((await readSummaryWorkbook(bytes)).record).toEqual(record)
  })
})

describe('reading a summary workbook back', () => {
  const anyText = fc.oneof(
    fc.string({ maxLength: 60, unit: 'grapheme' }),
    fc.string({ maxLength: 60, unit: 'binary' }),
  )

  it('recovers the record bit for bit, whatever the texts and numbers are', async () => {
    await fc.assert(
      fc.asyncProperty(
        anyText,
        anyText,
        fc.double({ min: 1, max: 1e7, noNaN: true }),
        fc.double({ min: -200, max: 200, noNaN: true }),
        async (notes, tester, volume, zero) => {
          const record = demo()
          record.test.notes = notes
          record.test.tester = tester
          record.building.volume_m3 = volume
          record.runs[0]?.zeroFlowBefore_Pa?.splice(0, 12, Math.abs(zero) < 5 ? zero : 0)
          const read = await readSummaryWorkbook(await writeSummaryWorkbook(record))
          expect(JSON.stringify(read.record)).toBe(JSON.stringify(record))
          expect(read.digests.record.found).toBe(read.digests.record.written)
          expect(read.digests.evaluation.found).toBe(read.digests.evaluation.written)
        },
      ),
      { numRuns: 25 },
    )
  })

  it('refuses a workbook that is not ours, saying so', async () => {
    const workbook = new ExcelJS.Workbook()
    workbook.addWorksheet('Log').getCell('A1').value = 1
    const bytes = new Uint8Array(await workbook.xlsx.writeBuffer())
    await expect(readSummaryWorkbook(bytes)).rejects.toThrow('no sheet Record')
  })
})
