import 'fake-indexeddb/auto'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { createExcelHost } from '../../addin/src/host/excel/excel-host.js'
import { type CellChange, type Host, HostError } from '../../addin/src/host/host.js'
import { PageHost } from '../../addin/src/host/page/page-host.js'
import { KeptTests } from '../../addin/src/kept/kept-tests.js'
import { OpenTest } from '../../addin/src/kept/open-test.js'
import { WorkbookBridge } from './excel-wire/bridge.js'
import { loadExcel } from './excel-wire/load-excel.js'
import { ModelWorkbook } from './excel-wire/workbook-model.js'
import { openedBook } from './opened-book.js'

/** One workbook, two hosts: the page twin and Excel's real object model over the wire. */
const CELLS = {
  'House 3': {
    A1: 'Pressure',
    B1: 'Flow',
    A2: -50.5,
    B2: { value: 92.1, format: '0.0', text: '92.1' },
    A3: '12,5',
    B3: true,
    C7: '#DIV/0!',
  },
  Empty: {},
  Log: { B2: 1, B3: 2, B4: 3 },
} as const

interface Driven {
  host: Host
  select(sheet: string, address: string): void
  edit(sheet: string, address: string, value: number): void | Promise<void>
}

function excel(): Driven {
  const workbook = new ModelWorkbook('Plot 7.xlsx', structuredClone(CELLS))
  workbook.Names.all.set('flows', () => workbook.Worksheets.Indexer('Log').GetRange('B2:B4'))
  const bridge = new WorkbookBridge(workbook)
  const { Excel, supported } = loadExcel(bridge)
  return {
    host: createExcelHost(Excel, supported),
    select: (sheet, address) => {
      workbook.active = workbook.Worksheets.Indexer(sheet)
      workbook.selected = [workbook.active.GetRange(address)]
    },
    edit: (sheet, address, value) => bridge.edit(sheet, address, value),
  }
}

const ABOUT = { name: 'Plot 7 (invented)', standing: 'No result yet' }
let kept: KeptTests
beforeAll(async () => {
  kept = await KeptTests.open('host-contract')
})

function page(): Driven {
  const host = new PageHost(new OpenTest(async () => kept, '{}', []))
  host.show(openedBook('Plot 7.xlsx', CELLS, { flows: ['Log', 'B2:B4'] }))
  return {
    host,
    select: (sheet, address) => void host.jump(`'${sheet}'!${address}`),
    edit: (sheet, address, value) => {
      const column = address.charCodeAt(0) - 64
      return host.type(sheet, Number(address.slice(1)), column, String(value))
    },
  }
}

const stops: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop()
})

describe.each([
  ['Excel', excel],
  ['page', page],
])('host contract: %s', (_name, open) => {
  it('tells where the selection is without reading it', async () => {
    const { host, select } = open()
    for (const sheet of ['Log', 'Empty']) {
      select(sheet, 'B2:C40')
      expect(await host.selectedReference()).toBe(`${sheet}!B2:C40`)
    }
    const quoted = Object.keys(CELLS).find((name) => name.includes(' ')) ?? ''
    select(quoted, 'A1')
    expect(await host.selectedReference()).toBe(`'${quoted.replaceAll("'", "''")}'!A1`)
  })

  it('names the workbook and lists its sheets with their used ranges', async () => {
    const { host } = open()
    expect(await host.workbookName()).toBe('Plot 7.xlsx')
    expect(await host.sheets()).toEqual([
      { name: 'House 3', used: 'A1:C7' },
      { name: 'Empty' },
      { name: 'Log', used: 'B2:B4' },
    ])
  })

  it('reads values, texts and formats of a range with its address', async () => {
    const { host } = open()
    const block = await host.read("'House 3'!A2:B3")
    expect(block).toMatchObject({
      sheet: 'House 3',
      address: 'A2:B3',
      values: [
        [-50.5, 92.1],
        ['12,5', true],
      ],
      formats: [
        ['General', '0.0'],
        ['General', 'General'],
      ],
    })
    expect(block.texts[0]).toEqual(['-50.5', '92.1'])
    expect(block.limited).toBeUndefined()
  })

  it('reads a named range', async () => {
    const { host } = open()
    expect(await host.read('flows')).toMatchObject({
      sheet: 'Log',
      address: 'B2:B4',
      values: [[1], [2], [3]],
    })
  })

  it('clips whole columns to what is used and says so', async () => {
    const driven = open()
    driven.select('Log', 'A:B')
    const block = await driven.host.selection()
    expect(block.address).toBe('B2:B4')
    expect(block.asked).toBe('A1:B1048576')
    expect(block.limited).toBe('read B2:B4, the part of A1:B1048576 that is used')
  })

  it('answers a selection on an empty sheet with no cells and the reason', async () => {
    const driven = open()
    driven.select('Empty', 'B2:C9')
    const block = await driven.host.selection()
    expect(block.values).toEqual([])
    expect(block.limited).toBe('B2:C9 on sheet Empty is empty')
  })

  it.each(['Nowhere!A1', 'no_such_name'])('refuses %s as not found', async (reference) => {
    const { host } = open()
    await expect(host.read(reference)).rejects.toMatchObject({ name: 'HostError', code: 'not-found' })
  })

  it('hands the log reader the cells asked for, with errors as errors', async () => {
    const { host } = open()
    const grid = await host.grid(["'House 3'!A1:C7", 'flows'])
    expect(grid.sheetNames).toEqual(['House 3', 'Empty', 'Log'])
    expect(grid.sheet('House 3')?.at(1, 1)).toEqual({ kind: 'number', value: 92.1, format: '0.0' })
    expect(grid.sheet('House 3')?.at(2, 0)).toEqual({ kind: 'text', value: '12,5' })
    expect(grid.sheet('House 3')?.at(6, 2)).toEqual({ kind: 'error', value: '#DIV/0!' })
    expect(grid.sheet('log')?.at(2, 1)?.value).toBe(2)
    expect(grid.sheet('Empty')?.rows).toBe(0)
    expect(grid.names).toEqual([
      { name: 'flows', sheet: 'Log', block: { top: 1, left: 1, bottom: 3, right: 1 } },
    ])
  })

  it('reports an edited cell until told to stop', async () => {
    const { host, edit } = open()
    const changes: CellChange[] = []
    const stop = await host.watch((change) => changes.push(change))
    await edit('Log', 'B3', 7)
    await expect.poll(() => changes).toContainEqual({ sheet: 'Log', address: 'B3' })
    expect((await host.read('Log!B3')).values).toEqual([[7]])
    await stop()
    changes.length = 0
    await edit('Log', 'B4', 8)
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect(changes).toEqual([])
  })

  it('goes on telling one listener when another is told to stop', async () => {
    const { host, edit } = open()
    const changes: CellChange[] = []
    await host.watch((change) => changes.push(change))
    const stop = await host.watch(() => undefined)
    await stop()
    await edit('Log', 'B3', 7)
    await expect.poll(() => changes).toContainEqual({ sheet: 'Log', address: 'B3' })
  })

  it('goes to a cell', async () => {
    const { host } = open()
    await host.jump('Log!B3')
    expect(await host.selection()).toMatchObject({ sheet: 'Log', address: 'B3' })
  })

  it('keeps settings with the workbook', async () => {
    const { host } = open()
    expect(await host.loadSettings()).toBeUndefined()
    await host.saveSettings('{"a":1}', ABOUT)
    await host.saveSettings('{"a":2}', ABOUT)
    expect(await host.loadSettings()).toBe('{"a":2}')
  })

  it('refuses cells without end instead of reading them', async () => {
    const driven = open()
    await driven.edit('Log', 'A1', 1)
    await driven.edit('Log', 'Z900000', 1)
    await expect(driven.host.read('Log!A1:Z900000')).rejects.toMatchObject({ code: 'too-large' })
  })
})

describe('Excel alone', () => {
  const workbookOf = (...names: string[]) =>
    new TextEncoder().encode(names.map((name) => `<sheet name="${name}"/>`).join(''))
  const start = (version?: string) => {
    const workbook = new ModelWorkbook('Plot 7.xlsx', structuredClone(CELLS))
    workbook.sheetNames = (bytes) =>
      [...new TextDecoder().decode(bytes).matchAll(/<sheet name="(\w+)"/g)].map(([, name = '']) => name)
    const bridge = new WorkbookBridge(workbook)
    const { Excel, supported } = loadExcel(bridge, version)
    return { workbook, bridge, host: createExcelHost(Excel, supported) }
  }

  it('marks cells without touching their own format, and takes its own marks away again', async () => {
    const { host, workbook } = start()
    await host.mark([
      { reference: 'Log!B3', severity: 'invalidates' },
      { reference: "'House 3'!A2:A3", severity: 'note' },
    ])
    const log = workbook.Worksheets.Indexer('Log')
    expect(log.formats.map(({ Custom }) => Custom.Rule.Formula)).toEqual(['=TRUE'])
    const users = log.GetRange('B2').ConditionalFormats.Add('Custom')
    await host.mark([{ reference: 'Log!B2', severity: 'caution' }])
    expect(log.formats).toHaveLength(2)
    await host.mark([])
    expect(log.formats).toEqual([users])
    expect(workbook.Worksheets.Indexer('House 3').formats).toEqual([])
  })

  it('says that several selected blocks cannot be read', async () => {
    const { host, workbook } = start()
    workbook.selected = [workbook.active.GetRange('A1'), workbook.active.GetRange('B2')]
    await expect(host.selection()).rejects.toMatchObject({ code: 'several-areas' })
  })

  it('inserts sheets behind the others, keeps names apart and draws the chart on log axes', async () => {
    const { host, workbook } = start()
    const result = await host.insertWorkbook(workbookOf('Summary', 'Working'), {
      sheet: 'Summary',
      anchor: 'B20',
      title: 'Flow against pressure',
      xTitle: 'Pa',
      yTitle: 'm³/h',
      series: [
        { name: 'Readings', sheet: 'Working', x: 'A2:A8', y: 'B2:B8', kind: 'points' },
        { name: 'Fit', sheet: 'Working', x: 'C2:C8', y: 'D2:D8', kind: 'line' },
      ],
    })
    expect(result).toEqual({ sheets: ['Summary', 'Working'], chart: true, notes: [] })
    const [chart] = workbook.Worksheets.Indexer('Summary').Charts.all
    expect(chart?.anchor).toBe('B20')
    expect(chart?.Axes.ValueAxis.ScaleType).toBe('Logarithmic')
    expect(chart?.Axes.CategoryAxis.ScaleType).toBe('Logarithmic')
    expect(chart?.Series.Items.map(({ Name, x, y }) => [Name, x?.Address, y?.Address])).toEqual([
      ['Readings', 'Working!A2:A8', 'Working!B2:B8'],
      ['Fit', 'Working!C2:C8', 'Working!D2:D8'],
    ])
  })

  it('offers the other ways when Excel will not insert', async () => {
    const { host, workbook } = start()
    workbook.fail.set('InsertWorksheetsFromBase64', { code: 'GeneralException', message: 'internal error' })
    await expect(host.insertWorkbook(workbookOf('Summary'), undefined)).rejects.toThrow(
      'Excel did not insert the sheets, and nothing was changed. Open the summary as a new workbook, or download it.',
    )
    expect(workbook.Worksheets.Items).toHaveLength(3)
    await host.openWorkbook(Uint8Array.of(1, 2, 3), 'x.xlsx')
    expect(workbook.created).toEqual(['AQID'])
  })

  it('says at once that an older Excel cannot insert sheets', async () => {
    const { host } = start('1.9')
    expect(host.unavailable.insertWorkbook).toContain('cannot insert sheets')
    await expect(host.insertWorkbook(Uint8Array.of(1), undefined)).rejects.toMatchObject({
      code: 'unsupported',
    })
  })

  it('works with ExcelApi 1.9 in everything else', async () => {
    const { host } = start('1.9')
    await host.mark([{ reference: 'Log!B3', severity: 'note' }])
    await host.saveSettings('x', ABOUT)
    const stop = await host.watch(() => undefined)
    await stop()
    await host.jump('Log!B3')
    expect((await host.grid()).sheet('Log')?.at(1, 1)?.value).toBe(1)
  })

  it('stays below the 5 MB one answer may have in Excel on the web, for 200,000 picked cells', async () => {
    const { host, workbook, bridge } = start()
    const sheet = workbook.add('Long')
    for (let row = 1; row <= 50_000; row++)
      for (const [index, letter] of ['A', 'B', 'C', 'D'].entries())
        sheet.cells.set(`${letter}${row}`, { value: -50.25 - index })
    const block = await host.read('Long!A:D')
    expect(block.values).toHaveLength(50_000)
    expect(block.values.at(-1)).toEqual([-50.25, -51.25, -52.25, -53.25])
    expect((await host.grid(['Long!A:D'])).sheet('Long')?.at(49_999, 3)?.value).toBe(-53.25)
    expect(Math.max(...bridge.sizes.map(({ response }) => response))).toBeLessThan(5_000_000)
  })

  it('asks Excel three times for the cells of a hundred picks, each trip taking tens of milliseconds there', async () => {
    const { host, workbook, bridge } = start()
    for (let row = 1; row <= 50; row++)
      workbook.Worksheets.Indexer('Log').cells.set(`D${row}`, { value: row })
    const picks = Array.from({ length: 50 }, (_, row) => [`Log!D${row + 1}`, `'House 3'!A${row + 1}`]).flat()
    bridge.sizes.length = 0
    const grid = await host.grid(picks)
    expect(grid.sheet('Log')?.at(49, 3)?.value).toBe(50)
    // Three for the cells; Excel.run adds one to let go of what it held.
    expect(bridge.sizes.length).toBeLessThanOrEqual(5)
  })

  it('turns any other fault into words that name what was being done', async () => {
    const error = await start()
      .host.read('Log!A1:ZZZZ9')
      .catch((fault: unknown) => fault)
    expect(error).toBeInstanceOf(HostError)
  })
})
