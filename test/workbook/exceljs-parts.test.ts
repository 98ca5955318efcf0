import { parseRecord } from '@draughtbook/shared-calc'
import ExcelJS from 'exceljs'
import { strFromU8, unzipSync } from 'fflate'
import { expect, test } from 'vitest'
import { evaluateWorked } from '../../shared-calc/src/assessment/evaluate.js'
import { layOutSummary } from '../../shared-calc/src/reports/workbook/write-summary.js'
import { exceljsParts } from '../../shared-calc/src/reports/workbook/zip/exceljs-parts.js'
import { inventedRecord } from '../archive/invented-record'
import { house } from '../site/support/house'

/** exceljs' own archive is the check: the library packs, fflate unpacks. */
async function asExceljsWrites(workbook: ExcelJS.Workbook): Promise<Map<string, string>> {
  const files = unzipSync(new Uint8Array(await workbook.xlsx.writeBuffer()))
  // The library adds entries of folders, which are no parts.
  const parts = Object.entries(files).filter(([path]) => !path.endsWith('/'))
  return new Map(parts.map(([path, bytes]) => [path, strFromU8(bytes)]))
}

const asWeWrite = async (workbook: ExcelJS.Workbook): Promise<Map<string, string>> =>
  new Map([...(await exceljsParts(workbook))].map(([path, bytes]) => [path, strFromU8(bytes)]))

test.each([
  ['an invented test with a budget', inventedRecord(12)],
  ['a house with take-off, plan and leaks', house],
])('parts of %s are those exceljs writes, byte for byte', async (_, record) => {
  const parsed = parseRecord(record)
  const worked = evaluateWorked(parsed, { uncertainty: true })
  const { workbook } = await layOutSummary(parsed, worked)
  expect(await asWeWrite(workbook)).toEqual(await asExceljsWrites(workbook))
})

test('links, truth values, heights, hidden and grouped rows are written as exceljs writes them', async () => {
  const workbook = new ExcelJS.Workbook()
  workbook.created = workbook.modified = new Date(0)
  const sheet = workbook.addWorksheet('One "sheet" & <more>')
  sheet.getCell('A1').value = { text: 'a link', hyperlink: 'a file.xlsx#Sheet!A1' }
  sheet.getCell('B1').value = true
  sheet.getCell('C1').value = { formula: 'A2="<&>"', result: false }
  sheet.getCell('D3').value = { formula: '"it\'s"&1', result: 'it\'s "1" < 2' }
  sheet.getCell('E3').value = 0.1 + 0.2
  sheet.getCell('D4').value = { error: '#N/A' }
  sheet.getCell('G4').value = { formula: '1/0', result: { error: '#DIV/0!' } }
  sheet.getCell('E4').value = new Date('2026-10-14T06:00:00Z')
  sheet.getCell('F4').value = { formula: 'E4', result: new Date('2026-10-14T00:00:00Z') }
  sheet.getCell('F3').font = { bold: true }
  sheet.getCell('G3').value = { formula: 'A9' }
  sheet.getCell('I3').value = {
    formula: 'MAX(IF(E3:E4=1,E3:E4))',
    result: 0,
    shareType: 'array',
    ref: 'I3',
  } as never
  sheet.mergeCells('A5:C6')
  sheet.getCell('A5').value = 'merged'
  sheet.getRow(7).height = 33.5
  sheet.getRow(8).hidden = true
  sheet.getRow(9).outlineLevel = 1
  sheet.getRow(9).font = { italic: true }
  workbook.addWorksheet('Empty')
  expect(await asWeWrite(workbook)).toEqual(await asExceljsWrites(workbook))
})

test('a cell that no sheet of ours has is refused, not written otherwise', async () => {
  const workbook = new ExcelJS.Workbook()
  workbook.addWorksheet('Shared').getCell('B2').value = { sharedFormula: 'A1' }
  await expect(exceljsParts(workbook)).rejects.toThrow('B2')
})
