import ExcelJS from 'exceljs'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { beforeAll, describe, expect, it } from 'vitest'
import { areaAddress } from '../../addin/src/host/address.js'
import { patchWorkbook } from '../../addin/src/patch/patch-workbook.js'
import { referencesIn } from '../../addin/src/patch/references.js'
import { withoutRecalculation } from '../support/libreoffice.js'

/** An invented log with styles, formulas over two sheets and a name; its stored results are wrong, so that none can be mistaken for a new one. */
const WRONG = 4711
let log: Uint8Array
beforeAll(async () => {
  const book = new ExcelJS.Workbook()
  const sheet = book.addWorksheet('Log')
  sheet.addRow(['Pressure [Pa]', 'Flow', 'Remark'])
  for (const [pressure, flow] of [
    [-50, 100],
    [-40, 86],
    [-30, 71],
  ])
    sheet.addRow([pressure, flow])
  sheet.getCell('B2').font = { bold: true }
  sheet.getCell('B2').numFmt = '0.00'
  const formula = (text: string) => ({ formula: text, result: WRONG })
  sheet.getCell('E2').value = formula('B2*2')
  sheet.getCell('E3').value = formula('B3*2')
  sheet.getCell('E4').value = formula('SUM(A2:A4)+LOG10(100)')
  sheet.getCell('E5').value = formula('first+1')
  const other = book.addWorksheet("Owner's sums")
  other.getCell('A1').value = formula('Log!E2+1')
  other.getCell('A2').value = formula('"Log!B2"&Log!B4')
  other.getCell('A3').value = formula('INDIRECT("Log!B"&2)')
  sheet.getCell('E6').value = formula("'Owner''s sums'!A1*2")
  book.definedNames.add('Log!$B$2', 'first')
  log = new Uint8Array(await book.xlsx.writeBuffer())
})

const parts = (bytes: Uint8Array) =>
  Object.fromEntries(Object.entries(unzipSync(bytes)).map(([path, part]) => [path, strFromU8(part)]))
const SHEET = 'xl/worksheets/sheet1.xml'

async function read(bytes: Uint8Array) {
  const book = new ExcelJS.Workbook()
  await book.xlsx.load(bytes.slice().buffer as ArrayBuffer)
  return book
}

describe('a log with cells changed', () => {
  const B2 = { sheet: 'Log', row: 2, column: 2, content: 250.5 }

  it('holds the new values with the styles the cells had, by another reader of workbooks', async () => {
    const { bytes, left } = patchWorkbook(log, [
      B2,
      { sheet: 'Log', row: 3, column: 3, content: 'gust & "wind" <3' },
      { sheet: 'Log', row: 4, column: 1, content: undefined },
      { sheet: 'Log', row: 9, column: 27, content: 1 },
      { sheet: 'Log', row: 9, column: 2, content: 2 },
    ])
    expect(left).toEqual([])
    const sheet = (await read(bytes)).getWorksheet('Log')
    expect(sheet?.getCell('B2').value).toBe(250.5)
    expect(sheet?.getCell('B2').numFmt).toBe('0.00')
    expect(sheet?.getCell('B2').font.bold).toBe(true)
    expect(sheet?.getCell('C3').value).toBe('gust & "wind" <3')
    expect(sheet?.getCell('A4').value).toBeNull()
    expect([sheet?.getCell('AA9').value, sheet?.getCell('B9').value]).toEqual([1, 2])
    expect(sheet?.getCell('B3').value).toBe(86)
  })

  it('loses the stored results of formulas that read them, directly, through others, or in a way that cannot be told', async () => {
    const { bytes } = patchWorkbook(log, [B2])
    const book = await read(bytes)
    const result = (sheet: string, cell: string) => book.getWorksheet(sheet)?.getCell(cell).result
    const stale = [
      ['Log', 'E2'],
      ['Log', 'E5'],
      ['Log', 'E6'],
      ["Owner's sums", 'A1'],
      ["Owner's sums", 'A3'],
    ] as const
    for (const [sheet, cell] of stale) expect(result(sheet, cell), `${sheet} ${cell}`).toBeUndefined()
    const others = [
      ['Log', 'E3'],
      ['Log', 'E4'],
      ["Owner's sums", 'A2'],
    ] as const
    for (const [sheet, cell] of others) expect(result(sheet, cell), `${sheet} ${cell}`).toBe(WRONG)
    expect(book.getWorksheet('Log')?.getCell('E2').formula).toBe('B2*2')
    expect(parts(bytes)['xl/workbook.xml']).toMatch(/<calcPr[^>]* fullCalcOnLoad="1"\/>/)
  })

  it('is worked out anew by LibreOffice where it must be, also where it is set never to recalculate', async () => {
    const book = await read(await withoutRecalculation(patchWorkbook(log, [B2]).bytes))
    const results = (['E2', 'E3', 'E5', 'E6'] as const).map(
      (cell) => book.getWorksheet('Log')?.getCell(cell).result,
    )
    // 250.5 doubled; untouched; 250.5 + 1; the doubled value on the other sheet, plus 1, doubled.
    expect(results).toEqual([501, WRONG, 251.5, 1004])
  })

  it('differs in the changed sheet and the order to recalculate only', () => {
    const [before, after] = [parts(log), parts(patchWorkbook(log, [{ ...B2, row: 3, content: 87 }]).bytes)]
    expect(Object.keys(after)).toEqual(Object.keys(before))
    const changed = Object.keys(before).filter((path) => before[path] !== after[path])
    // The second sheet has a formula that makes up its address: it loses its result.
    expect(changed.sort()).toEqual(['xl/workbook.xml', SHEET, 'xl/worksheets/sheet2.xml'])
    // Within the sheet: the cell, and the result of the one formula that is sure to read it. Two others cannot be told.
    const cut = (xml: string | undefined) => xml?.replace(/<c r="(B3|E3|E5)".*?<\/c>/g, '')
    expect(cut(after[SHEET])).toBe(cut(before[SHEET]))
  })

  it('takes a typed value in place of a formula, and with it the order of calculation', () => {
    const given = unzipSync(log)
    const with_ = (path: string, edit: (xml: string) => string) => {
      given[path] = strToU8(edit(strFromU8(given[path] ?? new Uint8Array())))
    }
    with_(
      'xl/calcChain.xml',
      () =>
        '<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="E2" i="1"/></calcChain>',
    )
    with_('[Content_Types].xml', (xml) =>
      xml.replace(
        '</Types>',
        '<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/></Types>',
      ),
    )
    with_('xl/_rels/workbook.xml.rels', (xml) =>
      xml.replace(
        '</Relationships>',
        '<Relationship Id="rId99" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/></Relationships>',
      ),
    )
    const kept = parts(patchWorkbook(zipSync(given), [B2]).bytes)
    expect(kept['xl/calcChain.xml']).toContain('E2')
    const after = parts(
      patchWorkbook(zipSync(given), [{ sheet: 'Log', row: 2, column: 5, content: 7 }]).bytes,
    )
    expect(after['xl/calcChain.xml']).toBeUndefined()
    expect(after['[Content_Types].xml']).not.toContain('calcChain')
    expect(after['xl/_rels/workbook.xml.rels']).not.toContain('calcChain')
    expect(after[SHEET]).toMatch(/<c r="E2"[^>]*><v>7<\/v><\/c>/)
  })

  it('leaves a formula alone that other cells share, and says so', () => {
    const given = unzipSync(log)
    given[SHEET] = strToU8(
      strFromU8(given[SHEET] ?? new Uint8Array()).replace(
        '<f>B2*2</f>',
        '<f t="shared" ref="E2:E3" si="0">B2*2</f>',
      ),
    )
    const { left, bytes } = patchWorkbook(zipSync(given), [{ sheet: 'Log', row: 3, column: 5, content: 7 }])
    expect(left).toEqual([
      { cell: 'Log!E3', why: 'its formula is shared with other cells; change it in the spreadsheet' },
    ])
    expect(parts(bytes)[SHEET]).toContain('<f t="shared" ref="E2:E3" si="0">B2*2</f>')
  })

  it('finds rows and cells that do not say where they are, and element names with a prefix', async () => {
    const given = unzipSync(log)
    const bare =
      '<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row><x:c><x:v>1</x:v></x:c><x:c><x:v>2</x:v></x:c></x:row><x:row/></x:sheetData></x:worksheet>'
    given[SHEET] = strToU8(bare)
    const { bytes } = patchWorkbook(zipSync(given), [B2, { ...B2, row: 1, content: 3 }])
    expect(parts(bytes)[SHEET]).toBe(
      bare
        .replace('<x:c><x:v>2</x:v></x:c>', '<x:c r="B1"><x:v>3</x:v></x:c>')
        .replace('<x:row/>', '<x:row><x:c r="B2"><x:v>250.5</x:v></x:c></x:row>'),
    )
  })
})

describe('the cells a formula reads', () => {
  it.each([
    ['B2*2', [[undefined, 'B2']]],
    ['SUM($A$2:A4)+LOG10(100)', [[undefined, 'A2:A4']]],
    ['\'Owner\'\'s "sums"\'!B2&"C3"', [['Owner\'s "sums"', 'B2']]],
    [
      'IF(A:A>1E5,TRUE,Log!3:4)',
      [
        [undefined, 'A1:A1048576'],
        ['Log', 'A3:XFD4'],
      ],
    ],
  ])('%s', (formula, expected) => {
    const found = referencesIn(formula)
    const places = found === 'unknown' ? found : found.map((area) => [area.sheet, areaAddress(area)])
    expect(places).toEqual(expected)
  })

  it.each([
    'first+1',
    'Table1[Flow]',
    'OFFSET(A1,1,0)',
    '[1]Log!A1',
    'Log:Sums!A1',
    'A1:INDEX(B:B,3)',
    '#REF!+1',
  ])('%s cannot be told', (formula) => {
    expect(referencesIn(formula)).toBe('unknown')
  })
})
