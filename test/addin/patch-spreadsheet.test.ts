import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { beforeAll, describe, expect, it } from 'vitest'
import { patchSpreadsheet } from '../../addin/src/patch/patch-spreadsheet.js'
import type { CellPatch } from '../../addin/src/patch/patch-workbook.js'
import { withoutRecalculation } from '../support/libreoffice.js'
import { runTool } from '../support/run-tool.js'

/** A workbook as LibreOffice saves it as .ods. */
async function asSpreadsheet(workbook: ExcelJS.Workbook): Promise<Uint8Array> {
  const folder = await mkdtemp(join(tmpdir(), 'draughtbook-ods-'))
  try {
    const path = join(folder, 'log.xlsx')
    await writeFile(path, new Uint8Array(await workbook.xlsx.writeBuffer()))
    const profile = `-env:UserInstallation=file://${folder}/profile`
    const order = ['--headless', '--convert-to', 'ods', '--outdir', folder, path]
    await runTool('soffice', [profile, ...order], 'libreoffice-calc')
    return new Uint8Array(await readFile(join(folder, 'log.ods')))
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** An invented log: formulas over two sheets, a comment, a merged block, equal cells side by side and equal rows, which .ods stores once. */
let log: Uint8Array
beforeAll(async () => {
  const book = new ExcelJS.Workbook()
  const sheet = book.addWorksheet('Log')
  sheet.addRow(['Pressure [Pa]', 'Flow', 'Remark'])
  for (const row of [
    [-50, 100],
    [-40, 86],
    [-30, 71],
  ])
    sheet.addRow(row)
  sheet.getCell('B2').font = { bold: true }
  sheet.getCell('B2').numFmt = '0.00'
  sheet.getCell('B3').note = 'read again'
  sheet.getCell('E2').value = { formula: 'B2*2', result: 200 }
  sheet.getCell('E3').value = { formula: 'SUM(A2:A4)', result: -120 }
  sheet.getCell('E4').value = { formula: 'E2+1', result: 201 }
  for (const address of ['A6', 'B6', 'C6', 'D6']) sheet.getCell(address).value = 7
  for (const row of [8, 9, 10, 11, 12]) sheet.getRow(row).values = ['same', 1]
  sheet.mergeCells('A14:B15')
  sheet.getCell('A14').value = 'block'
  const other = book.addWorksheet('Sums')
  other.getCell('A1').value = { formula: 'Log!E4*10', result: 2010 }
  log = await asSpreadsheet(book)
})

const at = (row: number, column: number, content: CellPatch['content']): CellPatch => ({
  sheet: 'Log',
  row,
  column,
  content,
})

/** Every cell as LibreOffice shows it, by sheet and address; it keeps results that are stored. */
async function shown(bytes: Uint8Array): Promise<Record<string, unknown>> {
  const book = new ExcelJS.Workbook()
  await book.xlsx.load((await withoutRecalculation(bytes)) as unknown as ArrayBuffer)
  const cells: Record<string, unknown> = {}
  for (const sheet of book.worksheets)
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        if (!cell.isMerged || cell.master === cell)
          cells[`${sheet.name}!${cell.address}`] = cell.formula ? cell.result : cell.value
      }),
    )
  return cells
}

describe('an .ods log with cells changed', () => {
  it('opens in LibreOffice with the changes and what follows from them, and nothing else changed', async () => {
    const { bytes, left } = patchSpreadsheet(log, [
      at(2, 2, 250.5),
      at(3, 2, 87),
      at(3, 3, 'gust & "wind" <3\nsecond  line'),
      at(4, 1, undefined),
      at(6, 3, 9),
      at(10, 2, 5),
      at(14, 1, 'other'),
      at(30, 28, 'far off'),
    ])
    expect(left).toEqual([])
    const [before, after] = await Promise.all([shown(log), shown(bytes)])
    expect(after).toEqual({
      ...Object.fromEntries(Object.entries(before).filter(([place]) => place !== 'Log!A4')),
      'Log!B2': 250.5,
      'Log!B3': 87,
      'Log!C3': 'gust & "wind" <3\nsecond  line',
      'Log!C6': 9,
      'Log!B10': 5,
      'Log!A14': 'other',
      'Log!AB30': 'far off',
      'Log!E2': 501,
      'Log!E3': -90,
      'Log!E4': 502,
      'Sums!A1': 5020,
    })
  })

  it('keeps style and comment of the cell, and every other part byte for byte', () => {
    const { bytes } = patchSpreadsheet(log, [at(2, 2, 250.5), at(3, 2, 87)])
    const [old, made] = [unzipSync(log), unzipSync(bytes)]
    expect(Object.keys(made)).toEqual(Object.keys(old))
    expect(Object.keys(made)[0]).toBe('mimetype')
    for (const [path, part] of Object.entries(old))
      if (path !== 'content.xml') expect(made[path]).toEqual(part)
    const sheet = (of: Uint8Array) => openLog(of, 'log.ods').sheet('Log')
    expect(sheet(bytes)?.at(1, 1)).toEqual({ ...sheet(log)?.at(1, 1), value: 250.5 })
    expect(sheet(bytes)?.commentAt?.(2, 1)).toContain('read again')
  })

  it('holds its kind uncompressed in front, as OpenDocument 1.3 part 2, 3.3 asks', () => {
    const { bytes } = patchSpreadsheet(log, [at(2, 2, 1)])
    const kind = 'application/vnd.oasis.opendocument.spreadsheet'
    expect(strFromU8(bytes.slice(30, 38))).toBe('mimetype')
    expect(strFromU8(bytes.slice(38, 38 + kind.length))).toBe(kind)
  })

  it('divides equal rows and equal cells that are stored once, and only where it has to', () => {
    const rows = (of: Uint8Array) => {
      const sheet = openLog(of, 'log.ods').sheet('Log')
      return [6, 8, 9, 10, 11, 12].map((row) =>
        [0, 1, 2, 3].map((column) => sheet?.at(row - 1, column)?.value),
      )
    }
    const { bytes } = patchSpreadsheet(log, [at(6, 2, 8), at(12, 1, 'last'), at(8, 4, 'first')])
    expect(rows(bytes)).toEqual([
      [7, 8, 7, 7],
      ['same', 1, undefined, 'first'],
      ['same', 1, undefined, undefined],
      ['same', 1, undefined, undefined],
      ['same', 1, undefined, undefined],
      ['last', 1, undefined, undefined],
    ])
  })

  it('says which cells it cannot change, and refuses a signed file', () => {
    const { left } = patchSpreadsheet(log, [at(15, 2, 3), { ...at(1, 1, 3), sheet: 'Nothing' }])
    expect(left).toEqual([
      { cell: 'Log!B15', why: 'it is inside a merged block; change the first cell of the block' },
      { cell: 'Nothing!A1', why: 'the spreadsheet has no such sheet' },
    ])
    const signed = zipSync({ ...unzipSync(log), 'META-INF/documentsignatures.xml': strToU8('<x/>') })
    expect(() => patchSpreadsheet(signed, [at(2, 2, 1)])).toThrow('signed')
  })
})
