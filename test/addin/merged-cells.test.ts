import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Grid, openLog, readPicks } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { understandLog } from '../../addin/src/calc/understand'
import { parseArea } from '../../addin/src/host/address'
import { createExcelHost } from '../../addin/src/host/excel/excel-host'
import { WorkbookBridge } from './excel-wire/bridge'
import { loadExcel } from './excel-wire/load-excel'
import { modelFromLog } from './excel-wire/model-from-log'
import { ModelWorkbook } from './excel-wire/workbook-model'

/** A form whose temperature stands in a merged block, C2:D3, and whose readings are in two merged columns each. */
const FORM = {
  Form: {
    A1: 'Blower door form (invented)',
    B2: 'Indoor',
    C2: 21.5,
    B8: 'House pressure [Pa]',
    B9: -50,
    D9: 310,
    B10: -40,
    D10: 268,
    B11: -30,
    D11: 222,
  },
}

function opened(workbook: ModelWorkbook, version?: string) {
  const bridge = new WorkbookBridge(workbook)
  const { Excel, supported } = loadExcel(bridge, version)
  return { bridge, host: createExcelHost(Excel, supported) }
}

function form(merged: readonly string[] = ['C2:D3', 'A1:F1', 'B9:C9', 'B10:C10', 'B11:C11']): ModelWorkbook {
  const workbook = new ModelWorkbook('form.xlsx', structuredClone(FORM))
  for (const address of merged) {
    const area = parseArea(address)
    if (area) workbook.Worksheets.Indexer('Form').merged.push(area)
  }
  return workbook
}

/** Reads one cell of the form as the indoor temperature, as the pane does for a picked cell. */
function indoorFrom(grid: Grid, cell: string) {
  const { top, left } = parseArea(cell) ?? { top: 1, left: 1 }
  const block = { top: top - 1, left: left - 1, bottom: top - 1, right: left - 1 }
  const path = 'conditions.indoorTemperature_C'
  const read = readPicks(grid, [{ path, sheet: 'Form', block, unit: '°C' }], [])
  return { draft: read.draft, cell: read.cells[path], findings: read.findings.map(({ rule }) => rule) }
}

describe('merged cells in Excel', () => {
  it('are read as in the file, for a log with headings in merged cells', async () => {
    const name = '10-merged-headings-unit-row.xlsx'
    const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '../log/samples', name)))
    const fromFile = understandLog(openLog(bytes, name), {})
    const fromExcel = understandLog(await opened(modelFromLog(bytes, name)).host.grid(), {})
    expect(fromFile.test?.record).toBeDefined()
    expect(fromExcel.test?.record).toEqual(fromFile.test?.record)
    expect(fromExcel.test?.cells).toEqual(fromFile.test?.cells)
    expect(fromExcel.uses).toEqual(fromFile.uses)
    expect(fromExcel.findings).toEqual(fromFile.findings)
  })

  it('give the value of their top left cell wherever they are picked, and say so', async () => {
    const { host } = opened(form())
    const grid = await host.grid(['Form!D3'])
    expect(indoorFrom(grid, 'D3')).toEqual({
      draft: { conditions: { indoorTemperature_C: 21.5 } },
      cell: 'Form!C2',
      findings: ['log-merged'],
    })
    expect(indoorFrom(await host.grid(['Form!C2']), 'C2').findings).toEqual([])
  })

  it('give it where the top left cell is far from the cell that was picked', async () => {
    const workbook = form(['C2:D30'])
    workbook.Worksheets.Indexer('Form').cells.set('A40', { value: 'end' })
    const { host } = opened(workbook)
    expect(indoorFrom(await host.grid(['Form!D30']), 'D30').cell).toBe('Form!C2')
  })

  it('count once: a block is known by all its cells and holds one value', async () => {
    const { host } = opened(form())
    const sheet = (await host.grid()).sheet('Form')
    expect(sheet?.mergeAt(8, 1)).toEqual({ top: 8, left: 1, bottom: 8, right: 2 })
    expect(sheet?.mergeAt(8, 2)).toEqual(sheet?.mergeAt(8, 1))
    expect([sheet?.at(8, 1)?.value, sheet?.at(8, 2)]).toEqual([-50, undefined])
    expect(sheet?.mergeAt(8, 3)).toBeUndefined()
  })

  it('cost no further trip to Excel', async () => {
    const { host, bridge } = opened(form())
    await host.grid()
    const withMerged = bridge.sizes.length
    const plain = opened(form([]))
    await plain.host.grid()
    expect(withMerged).toBe(plain.bridge.sizes.length)
  })

  it('are not known in an Excel without ExcelApi 1.13, and a note says so', async () => {
    const grid = await opened(form(), '1.12').host.grid()
    expect(grid.sheet('Form')?.mergeAt(1, 2)).toBeUndefined()
    expect(grid.findings).toMatchObject([
      {
        rule: 'log-merged-unread',
        severity: 'note',
        message: 'This version of Excel does not report which cells are merged.',
      },
    ])
  })

  it('are missed with a note that names the sheet where Excel refuses to list them, and only there', async () => {
    const workbook = form()
    const many = workbook.add('Many')
    for (let row = 1; row <= 600; row++) {
      many.cells.set(`A${row}`, { value: row })
      many.merged.push({ top: row, left: 1, bottom: row, right: 2 })
    }
    const grid = await opened(workbook).host.grid()
    expect(grid.sheet('Many')?.at(599, 0)?.value).toBe(600)
    expect(grid.sheet('Form')?.mergeAt(2, 3)).toEqual({ top: 1, left: 2, bottom: 2, right: 3 })
    expect(grid.findings.map(({ message }) => message)).toEqual([
      'Excel did not report the merged cells of "Many": it reports at most 512 on a sheet.',
    ])
  })
})
