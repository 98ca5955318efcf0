import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Grid, interpretLog, openLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { runTool } from '../../support/run-tool'
import { generatedLogs } from '../generated/recipes'
import { cell, rawSpreadsheet } from '../hostile/raw-spreadsheet'
import { sourceBook } from './source-book'

const DAY_ms = 86_400_000

/** What exceljs holds in a cell: days as serial numbers, formulas as their results. */
function held({ value, result, text, type }: ExcelJS.Cell): number | string | boolean | undefined {
  const plain = type === ExcelJS.ValueType.Formula ? result : value
  if (plain instanceof Date) return (plain.getTime() - Date.UTC(1899, 11, 30)) / DAY_ms
  if (plain === null || plain === undefined) return undefined
  if (typeof plain !== 'object') return plain
  return 'error' in plain ? String(plain.error) : text
}

/** Compares every cell, and returns how many there were. */
function expectSameCells(grid: Grid, workbook: ExcelJS.Workbook): number {
  let compared = 0
  for (const worksheet of workbook.worksheets) {
    const sheet = grid.sheet(worksheet.name)
    expect(sheet?.hidden, worksheet.name).toBe(worksheet.state !== 'visible')
    worksheet.eachRow((row) => {
      row.eachCell((theirs) => {
        if (theirs.isMerged && theirs.master !== theirs) return
        const place = [Number(theirs.row) - 1, Number(theirs.col) - 1] as const
        const ours = sheet?.at(...place)?.value
        const value = held(theirs)
        // LibreOffice writes 15 digits, and moments to the second.
        if (typeof value === 'number')
          expect(ours, theirs.address).toBeCloseTo(value, value > 40_000 ? 5 : 10)
        else expect(ours, theirs.address).toBe(value)
        if (theirs.font?.strike) expect(sheet?.at(...place)?.struck, theirs.address).toBe('whole')
        compared++
      })
      if (row.hidden) expect(sheet?.isRowHidden(row.number - 1)).toBe(true)
    })
  }
  return compared
}

describe('an .ods that LibreOffice wrote', () => {
  const fixture = new URL('fixtures/every-kind.ods', import.meta.url)
  const opened = async () => openLog(new Uint8Array(await readFile(fixture)), 'every-kind.ods')

  it('holds in every cell what exceljs holds in the workbook it was made from', async () => {
    expect(expectSameCells(await opened(), sourceBook())).toBe(30)
  })

  it('says of cells what a workbook says: formats, formulas, what is struck, hidden or merged', async () => {
    const grid = await opened()
    const at = (row: number, column: number) => grid.sheet('Test log')?.at(row - 1, column - 1)
    expect(at(3, 2)?.format).toBe('0.0" m³"')
    expect(at(5, 2)?.format).toBe('0.0%')
    expect(at(7, 2)?.format).toMatch(/^dd"\/"mm"\/"yyyy$/)
    expect(at(9, 2)?.format).toBe('h":"mm":"ss')
    expect(at(16, 2)?.format).toBe('0.0" Pa"')
    expect(at(12, 2)?.formula).toBe('SUM(B3:B4)')
    expect(at(14, 2)?.formula).toBe('IF(B4>0,"up","down")')
    expect(at(13, 2)).toMatchObject({ kind: 'error', value: '#DIV/0!' })
    expect(at(5, 3)).toMatchObject({ value: '373 wrong 351', struck: 'part', unstruck: '373  351' })
    expect(at(6, 3)?.value).toBe('with a note')
    expect(grid.sheet('test log')?.mergeAt(6, 6)).toEqual({ top: 5, left: 4, bottom: 6, right: 6 })
    expect(grid.sheet('Test log')?.isColumnHidden(9)).toBe(true)
    expect(grid.sheet('Test log')?.rows).toBe(900)
    expect(grid.sheetNames).toEqual(['Test log', 'Old job'])
    expect(grid.names).toEqual([
      { name: 'HouseVolume', sheet: 'Test log', block: { top: 2, left: 1, bottom: 2, right: 1 } },
    ])
  })

  it('reads booleans, amounts, moments and durations as OpenDocument 1.3 part 3, 19.385 to 19.390 stores them', () => {
    const typed = (type: string, attributes: string) =>
      `<table:table-cell office:value-type="${type}" ${attributes}/>`
    const cells = [
      typed('boolean', 'office:boolean-value="true"'),
      typed('currency', 'office:value="12.5" office:currency="EUR"'),
      typed('percentage', 'office:value="0.45"'),
      typed('date', 'office:date-value="2026-10-14T12:00:00"'),
      typed('time', 'office:time-value="PT06H30M00S"'),
      typed('string', 'office:string-value="by attribute"'),
    ]
    const sheet = openLog(
      rawSpreadsheet({ rows: `<table:table-row>${cells.join('')}</table:table-row>` }),
      'a.ods',
    )
    expect(cells.map((_, column) => sheet.sheet('Log')?.at(0, column))).toMatchObject([
      { kind: 'boolean', value: true },
      { kind: 'number', value: 12.5 },
      { kind: 'number', value: 0.45, format: '0%' },
      // 14 October 2026 is day 46309 when 1 January 1900 is day 1, as spreadsheets count.
      { kind: 'number', value: 46309.5, format: 'yyyy-mm-dd' },
      { kind: 'number', value: 6.5 / 24, format: '[h]:mm:ss' },
      { kind: 'text', value: 'by attribute' },
    ])
  })

  it('counts on empty repeats and writes filled ones out', () => {
    const rows = `<table:table-row table:number-rows-repeated="1048570"/><table:table-row table:visibility="filter" table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="16380"/>${cell(5, 'table:number-columns-repeated="3"')}</table:table-row>`
    const sheet = openLog(rawSpreadsheet({ rows }), 'a.ods').sheet('Log')
    expect([...(sheet?.cells?.() ?? [])].length).toBe(6)
    expect(sheet?.at(1_048_571, 16_382)?.value).toBe(5)
    expect(sheet?.isRowHidden(1_048_571)).toBe(true)
  })

  it('leaves out cells that another file lent and cells under a merged block', () => {
    const more =
      '<table:table table:name="x"><table:table-source/><table:table-row><table:table-cell office:value-type="float" office:value="1"/></table:table-row></table:table>'
    const rows = `<table:table-row>${cell(1, 'table:number-columns-spanned="2"')}<table:covered-table-cell office:value-type="float" office:value="9"/>${cell(2)}</table:table-row>`
    const grid = openLog(rawSpreadsheet({ rows, more }), 'a.ods')
    expect(grid.sheetNames).toEqual(['Log'])
    expect([0, 1, 2].map((column) => grid.sheet('Log')?.at(0, column)?.value)).toEqual([1, undefined, 2])
  })

  it('reads logs just saved by LibreOffice as it reads the workbooks', async () => {
    const logs = generatedLogs.filter(({ name }) =>
      [
        'german protocol, unit row',
        'filtered to one job',
        'old job hidden, below',
        'struck-out reading, below',
        'averages by formula',
        'units by number format',
      ].includes(name),
    )
    expect(logs.length).toBe(6)
    const folder = await mkdtemp(join(tmpdir(), 'spreadsheets-'))
    try {
      for (const log of logs) await writeFile(join(folder, log.fileName), await log.write())
      await runTool(
        'soffice',
        [
          `-env:UserInstallation=file://${folder}/profile`,
          ...['--headless', '--convert-to', 'ods', '--outdir', folder],
          ...logs.map(({ fileName }) => join(folder, fileName)),
        ],
        'libreoffice-calc',
      )
      for (const { fileName } of logs) {
        const workbook = new ExcelJS.Workbook()
        await workbook.xlsx.readFile(join(folder, fileName))
        const name = fileName.replace(/xlsx$/, 'ods')
        const grid = openLog(new Uint8Array(await readFile(join(folder, name))), name)
        expect(expectSameCells(grid, workbook), name).toBeGreaterThan(30)
        const understood = (log: Grid) => interpretLog(log).tests.map(({ record }) => record)
        const bytes = new Uint8Array(await readFile(join(folder, fileName)))
        expect(understood(grid), name).toEqual(understood(openLog(bytes, fileName)))
      }
    } finally {
      await rm(folder, { recursive: true, force: true })
    }
  }, 120_000)
})
