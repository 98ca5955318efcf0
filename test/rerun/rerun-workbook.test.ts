import { evaluateWorked, parseRecord } from '@draughtbook/shared-calc'
import {
  makeRerunReport,
  type RerunReport,
  rerunFile,
  writeRerunWorkbook,
} from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { Tamperer, withNumber, withText } from '../archive/tamper'
import { compareCached } from '../support/formula-cells'
import { toPdf } from '../support/libreoffice'
import { pdfPages } from '../support/pdf-pages'

let report: RerunReport
let bytes: Uint8Array

beforeAll(async () => {
  const whole = await writeSummaryWorkbook(parseRecord(inventedRecord(1)))
  const book = new Tamperer(whole)
  const cells = book.cells()
  const reading = cells.find(({ sheet, xml }) => sheet === 'Readings' && /<v>-?6\d\.\d<\/v>/.test(xml))
  const result = cells.find(
    ({ sheet, xml }) => sheet === 'Summary' && xml.includes('<f>') && /<v>0\.\d+<\/v>/.test(xml),
  )
  const record = cells.find(
    ({ sheet, xml }) => sheet === 'Record' && book.sharedText(xml)?.includes('volume_m3'),
  )
  if (!reading || !result || !record) throw new Error('the cells to tamper with are not there')
  const text = (book.sharedText(record.xml) ?? '').replaceAll('&quot;', '"')
  const files: [string, Uint8Array][] = [
    ['archive/2026/untouched.xlsx', whole],
    ['archive/2026/reading changed.xlsx', book.with(reading, withNumber(reading, 61.5))],
    ['archive/2026/result typed over.xlsx', book.with(result, withText(result, '0.31'))],
    [
      'archive/2026/volume changed.xlsx',
      book.with(record, withText(record, text.replace(/"volume_m3":[\d.]+/, '"volume_m3":250'))),
    ],
    ['archive/2026/cut.xlsx', whole.slice(0, 9000)],
  ]
  const tests = []
  for (const [name, content] of files) tests.push(...(await rerunFile(content, name)))
  report = await makeRerunReport(tests, '2030-01-15')
  bytes = await writeRerunWorkbook(report)
})

describe('the re-run workbook', () => {
  it('counts outcomes and puts the gravest first', () => {
    expect(report.counts).toEqual({
      'exactly as issued': 1,
      'saved again': 0,
      agrees: 0,
      'older calculation version': 0,
      differs: 1,
      'inputs changed after issue': 2,
      'signature not accepted': 0,
      'cannot be read': 1,
    })
    expect(report.tests.map(({ outcome }) => outcome)).toEqual([
      'cannot be read',
      'inputs changed after issue',
      'inputs changed after issue',
      'differs',
      'exactly as issued',
    ])
  })

  it('holds formulas that LibreOffice works out to the stored results', async () => {
    expect(await compareCached(bytes)).toEqual([])
  })

  it('has a row for each figure that differs, with the recorded value, the link to the cell and the working', async () => {
    const sheet = (await load(bytes)).getWorksheet('Differences')
    const rows: unknown[][] = []
    sheet?.eachRow((row) => rows.push(row.values as unknown[]))
    const n50 = rows.find(([, , , what, which]) => what === 'figure' && /^ *result: n50$/.test(String(which)))
    const issued = inventedRecord(1)
    const changed = inventedRecord(1)
    changed.building.volume_m3 = 250
    // The figure stands under the field that was changed: as issued, and as it becomes.
    expect(n50?.[6]).toBe(evaluateWorked(issued).evaluation.results.n50?.value)
    expect(n50?.[8]).toBe(evaluateWorked(changed).evaluation.results.n50?.value)
    expect(n50?.[1]).toMatchObject({ text: 'volume changed.xlsx' })
    expect(n50?.[5]).toMatchObject({
      hyperlink: expect.stringMatching(/^\.\/archive\/2026\/volume%20changed\.xlsx#Working!/),
    })
    expect(String(n50?.[13])).toMatch(/^n_pr = q_pr.*= \d.*\/250 = /)
    const volume = rows.find(([, , , what, which]) => what === 'input' && /volume/.test(String(which)))
    expect([volume?.[6], volume?.[7]]).toEqual([issued.building.volume_m3, 250])
  })

  it('says first, in a formula, how many tests are to check', async () => {
    const sheet = (await load(bytes)).getWorksheet('Sign-off')
    expect(sheet?.getCell('A2').result).toBe('4 of 5 to check')
  })

  it('says what digests and signatures do and do not prove', async () => {
    const sheet = (await load(bytes)).getWorksheet('Sign-off')
    const texts: string[] = []
    sheet?.eachRow((row) => row.eachCell((cell) => texts.push(cell.text)))
    expect(texts.join('\n')).toMatch(/does not show that the readings are true/)
  })

  it('is the same to the byte when it is written again', async () => {
    expect(Buffer.compare(await writeRerunWorkbook(report), bytes)).toBe(0)
  })

  it('prints its sheets on paper to check', async () => {
    const pages = await pdfPages(await toPdf(bytes), 'rerun')
    expect(pages.length).toBeGreaterThanOrEqual(3)
  })
})

async function load(content: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(content.slice().buffer)
  return workbook
}
