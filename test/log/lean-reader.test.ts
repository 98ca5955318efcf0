import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openLog, parseLayout, readLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { runTool } from '../support/run-tool'
import { madeUpLogs } from './logs/index'
import { expectRecord } from './support/expect-record'

const books = madeUpLogs.filter(({ fileName }) => /\.xls[xm]$/i.test(fileName))

/** What exceljs makes of a cell, as the lean reader would say it; undefined where there is nothing. */
function plain(cell: ExcelJS.Cell): number | string | boolean | undefined {
  const value = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value
  if (value === null || value === undefined) return undefined
  if (value instanceof Date) return value.getTime()
  if (typeof value !== 'object') return value
  return 'error' in value ? String(value.error) : cell.text
}

describe('the lean reader', () => {
  it.each(books)('sees in every cell of the $name what exceljs sees', async ({ write, fileName }) => {
    const bytes = await write()
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes.slice().buffer)
    const { date1904 } = workbook.properties
    const grid = openLog(bytes, fileName)
    let compared = 0
    for (const worksheet of workbook.worksheets)
      worksheet.eachRow((row) =>
        row.eachCell((cell) => {
          if (cell.isMerged && cell.master !== cell) return
          const theirs = plain(cell)
          const ours = grid.sheet(worksheet.name)?.at(Number(cell.row) - 1, Number(cell.col) - 1)
          if (cell.value instanceof Date) {
            // exceljs gives days as dates; both date systems count days of 86,400,000 ms.
            const start = date1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30)
            expect(Math.abs(start + Number(ours?.value) * 86_400_000 - Number(theirs))).toBeLessThan(2)
          } else expect(ours?.kind === 'unstored' ? undefined : ours?.value, cell.address).toBe(theirs)
          compared++
        }),
      )
    expect(compared).toBeGreaterThan(20)
  })

  it('reads the same records from what LibreOffice saves', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'resaved-'))
    try {
      const chosen = books.filter(({ name }) =>
        ['english form', 'german protocol', 'dirty sheet', 'device workbook'].includes(name),
      )
      for (const { write, name } of chosen) await writeFile(join(folder, `${name}.xlsx`), await write())
      await runTool(
        'soffice',
        [
          `-env:UserInstallation=file://${folder}/profile`,
          '--headless',
          '--convert-to',
          'xlsx:Calc MS Excel 2007 XML',
          '--outdir',
          join(folder, 'out'),
          ...chosen.map(({ name }) => join(folder, `${name}.xlsx`)),
        ],
        'libreoffice-calc',
      )
      for (const { name, layout, records } of chosen) {
        const read = readLog(
          new Uint8Array(await readFile(join(folder, 'out', `${name}.xlsx`))),
          `${name}.xlsx`,
          { layout: parseLayout(layout) },
        )
        expect(read.problems, name).toEqual([])
        expectRecord(read.tests[0]?.record, records[0], name)
      }
    } finally {
      await rm(folder, { recursive: true, force: true })
    }
  }, 120_000)
})
