import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { addCharts } from '../../shared-calc/src/reports/workbook/chart/add-charts.js'
import { attributesOf } from '../../shared-calc/src/reports/workbook/chart/relationships.js'
import { readParts, textOf, writeParts } from '../../shared-calc/src/reports/workbook/zip/parts.js'
import { inventedWorkbook, leakageChart, SHEET } from './chart-data'
import { orderProblems } from './schema-order'

const SHEET_PART = 'xl/worksheets/sheet1.xml'
const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=='

/** The invented workbook with whatever exceljs can put behind the cells of a sheet. */
async function furnished(furnish: (sheet: ExcelJS.Worksheet, workbook: ExcelJS.Workbook) => void) {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(new Uint8Array(await inventedWorkbook()).buffer)
  const sheet = workbook.getWorksheet(SHEET)
  if (sheet) furnish(sheet, workbook)
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

const withPicture = (sheet: ExcelJS.Worksheet, workbook: ExcelJS.Workbook) => {
  const id = workbook.addImage({ base64: PIXEL, extension: 'png' })
  sheet.addImage(id, { tl: { col: 0, row: 40 }, ext: { width: 9, height: 9 } })
}
const withNote = (sheet: ExcelJS.Worksheet) => {
  sheet.getCell('A1').note = 'An invented note'
}
const withDataBars = (sheet: ExcelJS.Worksheet) => {
  const rule = { type: 'dataBar', priority: 1, cfvo: [{ type: 'min' }, { type: 'max' }] } as const
  sheet.addConditionalFormatting({ ref: 'A3:A10', rules: [rule as never] })
  sheet.addTable({ name: 'Notes', ref: 'L1', columns: [{ name: 'Note' }], rows: [['invented']] })
}

describe('charts in a package', () => {
  it('leave every other part byte for byte as it was', async () => {
    const before = await inventedWorkbook()
    const [old, now] = [readParts(before), readParts(addCharts(before, [leakageChart()]))]
    const touched = [...old].filter(
      ([path, bytes]) => Buffer.compare(bytes, now.get(path) ?? new Uint8Array()) !== 0,
    )
    expect(touched.map(([path]) => path).sort()).toEqual(['[Content_Types].xml', SHEET_PART])
    expect([...now.keys()].filter((path) => !old.has(path)).sort()).toEqual([
      'xl/charts/chart1.xml',
      'xl/drawings/_rels/drawing1.xml.rels',
      'xl/drawings/drawing1.xml',
      'xl/worksheets/_rels/sheet1.xml.rels',
    ])
  })

  it.each([
    ['nothing', () => undefined, 0],
    ['a picture', withPicture, 1],
    ['a note (legacy drawing)', withNote, 0],
    ['data bars and a table', withDataBars, 0],
    [
      'a picture and a note',
      (sheet: ExcelJS.Worksheet, workbook: ExcelJS.Workbook) => {
        withPicture(sheet, workbook)
        withNote(sheet)
      },
      1,
    ],
  ])(
    'fit into a sheet with %s, twice, in schema order and with every reference resolved',
    async (_, furnish, pictures) => {
      const once = addCharts(await furnished(furnish), [leakageChart()])
      const parts = readParts(addCharts(once, [{ ...leakageChart(), title: 'Second' }]))
      const sheet = textOf(parts, SHEET_PART)
      expect(orderProblems(sheet)).toEqual([])
      expect(attributesOf(sheet, 'drawing')).toHaveLength(1)
      const drawing = textOf(parts, 'xl/drawings/drawing1.xml')
      expect(orderProblems(drawing)).toEqual([])
      expect(attributesOf(drawing, 'graphicFrame')).toHaveLength(2)
      expect(attributesOf(drawing, 'pic')).toHaveLength(pictures)
      const ids = attributesOf(drawing, 'cNvPr').map(({ id }) => id)
      expect(new Set(ids).size).toBe(ids.length)
      expect(danglingReferences(parts)).toEqual([])
    },
  )

  it('are loaded by exceljs with every cell as it was', async () => {
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(new Uint8Array(addCharts(await inventedWorkbook(), [leakageChart()])).buffer)
    expect(workbook.getWorksheet(SHEET)?.getCell('A3').value).toBe(12)
  })

  it('give the same bytes for the same input, at any time and in any time zone', async () => {
    const before = await inventedWorkbook()
    const first = addCharts(before, [leakageChart()])
    const zone = process.env.TZ
    process.env.TZ = 'Pacific/Auckland'
    const second = addCharts(writeParts(readParts(before)), [leakageChart()])
    if (zone === undefined) delete process.env.TZ
    else process.env.TZ = zone
    expect(Buffer.compare(first, second)).toBe(0)
    // The first local header holds its time and date at bytes 10 to 13: 1980-01-01 00:00 in the zip format.
    expect([...first.slice(10, 14)]).toEqual([0, 0, 0x21, 0])
  })

  it('are refused for bytes that are no zip, and for a zip that is no workbook', () => {
    expect(() => addCharts(new Uint8Array([1, 2, 3]), [leakageChart()])).toThrow(/not a readable zip/)
    const emptyZip = new Uint8Array(22)
    emptyZip.set([0x50, 0x4b, 5, 6])
    expect(() => addCharts(emptyZip, [leakageChart()])).toThrow(/names no workbook part/)
  })
})

/** Relationship targets without a part, parts without a content type, ids used but not declared. */
function danglingReferences(parts: Map<string, Uint8Array>): unknown[] {
  const types = attributesOf(textOf(parts, '[Content_Types].xml'), 'Override').map(({ PartName }) => PartName)
  const missing: (string | undefined)[] = types.filter((name) => !parts.has((name ?? '').slice(1)))
  for (const path of parts.keys()) {
    if (/^xl\/(charts|drawings)\/[^/]*\.xml$/.test(path) && !types.includes(`/${path}`)) missing.push(path)
    const rels = /^(.*)_rels\/(.*)\.rels$/.exec(path)
    if (!rels) continue
    const declared = attributesOf(textOf(parts, path), 'Relationship')
    for (const { Target = '' } of declared) {
      const target = new URL(Target, `file:///${rels[1]}${rels[2]}`).pathname.slice(1)
      if (!parts.has(target)) missing.push(`${path}: ${Target}`)
    }
    const owner = rels[2] ? textOf(parts, `${rels[1]}${rels[2]}`) : ''
    const used = [...owner.matchAll(/ r:(?:id|embed)="([^"]*)"/g)].map(([, id]) => id)
    for (const id of used) if (!declared.some(({ Id }) => Id === id)) missing.push(`${path}: ${id}`)
  }
  return missing
}
