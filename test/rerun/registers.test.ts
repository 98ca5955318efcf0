import { makeRegister, readLines, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { makeRerunReport, type RerunTest, rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { inventedMonth } from '../archive/invented-month'
import { recalculate } from '../support/libreoffice'
import { PackageText } from './support/package'

const tests: { file: string; bytes: Uint8Array; rerun: RerunTest[] }[] = []
let register: Uint8Array

beforeAll(async () => {
  for (const [i, record] of inventedMonth(8, 11).entries()) {
    const file = `october/${record.building.site}/${i + 1}.xlsx`
    const bytes = await writeSummaryWorkbook(record)
    tests.push({ file, bytes, rerun: await rerunFile(bytes, file) })
  }
  register = await registerOf(tests)
})

const registerOf = (files: readonly { file: string; bytes: Uint8Array }[]) =>
  writeRegisterWorkbook(
    makeRegister(
      files.flatMap(({ file, bytes }) => readLines(bytes, file).lines),
      [],
      { asOf: '2026-11-26' },
    ),
  )

/** The register's entry in a re-run of it with all tests, or with some. */
async function rerun(bytes: Uint8Array, given = tests) {
  const report = await makeRerunReport(
    [...given.flatMap((one) => one.rerun), ...(await rerunFile(bytes, 'register.xlsx'))],
    '2026-11-26',
  )
  return {
    report,
    entry: report.tests.find(({ file }) => file === 'register.xlsx'),
  }
}

/** Address and stored xml of a cell of the register, by the first letters of its heading and its row. */
function cellOf(book: PackageText, head: string, row: number) {
  const path = book.sheet('Register')
  const texts = (book.text('xl/sharedStrings.xml').match(/<si>.*?<\/si>/gs) ?? []).map((si) =>
    si.replace(/<[^>]*>/g, ''),
  )
  const heads = [...book.text(path).matchAll(/<c r="([A-Z]+)6"[^>]*t="s"[^>]*><v>(\d+)<\/v>/g)]
  const letter = heads.find(([, , index]) => texts[Number(index)]?.startsWith(head))?.[1]
  const xml = new RegExp(`<c r="${letter}${row}"[^>]*?(?:/>|>.*?</c>)`, 's').exec(book.text(path))?.[0] ?? ''
  expect(xml).not.toBe('')
  return { address: `${letter}${row}`, xml, path }
}

function changed(head: string, row: number, change: (xml: string) => string): Uint8Array {
  const book = new PackageText(register)
  const { xml, path } = cellOf(book, head, row)
  return book.edit(path, xml, () => change(xml)).bytes
}

describe('a register re-run with its tests', () => {
  it('agrees as written, and after LibreOffice has saved it', async () => {
    for (const bytes of [register, await recalculate(register)]) {
      const { entry, report } = await rerun(bytes)
      expect(entry?.differences).toEqual([])
      expect(entry?.outcome).toBe('agrees')
      expect(entry?.why).toMatch(/^made again from its 8 tests, every figure and everything visible agrees/)
      expect(report.passedOver).toBeUndefined()
    }
  })

  it.each([
    ['a figure', 'n50', (xml: string) => xml.replace(/<v>[^<]*/, '<v>0.31')],
    ['a limit', 'Limit', (xml: string) => xml.replace(/<v>[^<]*/, '<v>0.9')],
    ['a date', 'Date', (xml: string) => xml.replace(/<v>(\d+)/, (_, day) => `<v>${Number(day) + 1}`)],
    [
      'the stored verdict',
      'Verdict',
      (xml: string) => xml.replace(/<v>(meets|fails)/, (_, v) => `<v>${v === 'meets' ? 'fails' : 'meets'}`),
    ],
    ['the formula of a verdict', 'Verdict', (xml: string) => xml.replace(/<f>.*?<\/f>/s, '<f>"meets"</f>')],
    ['a margin typed over', 'Margin', (xml: string) => xml.replace(/<f>.*?<\/f>/s, '')],
    ['findings left out', 'Invali', (xml: string) => xml.replace(/<v>[^<]*/, '<v>7')],
    ['an empty figure', 'qE50', (xml: string) => xml.replace(/<v>[^<]*<\/v>/, '')],
  ] as const)('differs by %s, with its cell', async (_, head, change) => {
    const bytes = changed(head, 9, change)
    const { entry, report } = await rerun(bytes)
    const { address } = cellOf(new PackageText(register), head, 9)
    expect(entry?.outcome).toBe('differs')
    expect(entry?.differences.map(({ cell }) => cell)).toContain(`Register!${address}`)
    expect(report.counts.differs).toBe(1)
  })

  /** The register with its first n50 in another font or number format. */
  function dressed(font: string, format?: string): Uint8Array {
    const book = new PackageText(register)
    const { address } = cellOf(book, 'n50', 7)
    const own = book.addTo('fonts', `<font>${font}<name val="Calibri"/></font>`)
    if (format !== undefined) book.addTo('numFmts', `<numFmt numFmtId="490" formatCode="${format}"/>`)
    return book.restyle('Register', address, (xf) =>
      xf
        .replace(/fontId="\d+"/, `fontId="${own}"`)
        .replace(/numFmtId="\d+"/, (usual) => (format === undefined ? usual : 'numFmtId="490"')),
    ).bytes
  }

  it.each([
    ['white letters', '<sz val="11"/><color rgb="FFFFFFFF"/>', undefined],
    ['nearly white letters', '<sz val="11"/><color rgb="FFF2F2F0"/>', undefined],
    ['letters of one point', '<sz val="1"/>', undefined],
    ['letters struck out', '<strike/><sz val="11"/>', undefined],
    ['a format that shows nothing', '<sz val="11"/>', ';;;'],
    ['a format that shows the same for every number', '<sz val="11"/>', '&quot;0.31&quot;'],
    ['a format that shows thousandths', '<sz val="11"/>', '0.000,'],
  ])('differs by a value that cannot be read: %s', async (_, font, format) => {
    const { entry } = await rerun(dressed(font, format))
    const { address } = cellOf(new PackageText(register), 'n50', 7)
    expect(entry?.outcome).toBe('differs')
    expect(entry?.differences).toMatchObject([
      { label: 'the value cannot be read', cell: `Register!${address}` },
    ])
  })

  it('agrees where somebody gave a figure another colour, and names its cell; where a test is not given, only what cannot be read is', async () => {
    const coloured = dressed('<sz val="10"/><color rgb="FFC00000"/>')
    const { address } = cellOf(new PackageText(register), 'n50', 7)
    const { entry } = await rerun(coloured)
    expect(entry?.outcome).toBe('agrees')
    expect(entry?.why).toContain(
      `every figure, text and formula agrees; cells coloured or set otherwise since: Register!${address}`,
    )
    expect(entry?.differences).toMatchObject([
      { kind: 'appearance', label: 'text colour', cell: `Register!${address}` },
    ])
    expect((await rerun(coloured, tests.slice(1))).entry?.outcome).toBe('agrees')
  })

  it('differs by a box over a sheet, and by results shown otherwise than they are', async () => {
    const book = new PackageText(register)
    const drawing = Object.keys(book.parts).find((path) => /drawings\/drawing\d+\.xml$/.test(path)) ?? ''
    const [anchor = ''] = /<xdr:twoCellAnchor.*?<\/xdr:from>/s.exec(book.text(drawing)) ?? []
    const box = `${anchor}<xdr:to><xdr:col>5</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>9</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to><xdr:sp><xdr:nvSpPr><xdr:cNvPr id="70" name="x"/><xdr:cNvSpPr/></xdr:nvSpPr><xdr:spPr/><xdr:txBody><a:p><a:r><a:t>all met</a:t></a:r></a:p></xdr:txBody></xdr:sp><xdr:clientData/></xdr:twoCellAnchor>`
    const boxed = await rerun(book.edit(drawing, /(<\/xdr:wsDr>)/, `${box}$1`).bytes)
    expect(boxed.entry?.differences.map(({ label }) => label)).toEqual([
      'a text box or shape lies on the sheet',
    ])
    const zeros = new PackageText(register)
    zeros.edit(zeros.sheet('Register'), '<sheetView ', '<sheetView showZeros="0" ')
    const { entry } = await rerun(zeros.bytes)
    expect(entry?.differences.map(({ label }) => label)).toEqual(['sheet Register: zeros shown'])
  })

  it('differs by a formula of the line “shown” typed over', async () => {
    const book = new PackageText(register)
    const typed = book.edit(book.sheet('Register'), /(<c r="C4"[^>]*>)<f>.*?<\/f>/s, '$1').bytes
    expect((await rerun(typed)).entry?.differences.map(({ cell }) => cell)).toEqual(['Register!C4'])
  })

  it('says which sheets are hidden or were added, and which columns cannot be read', async () => {
    const book = new PackageText(register)
    book.edit('xl/workbook.xml', /(name="Totals"[^>]*state=")visible/, '$1veryHidden')
    book.edit(book.sheet('Register'), /(<col min="2"[^>]*width=")[\d.]+/, '$10.1')
    expect((await rerun(book.bytes)).entry?.differences.map(({ label }) => label)).toEqual([
      'width of column B, characters',
      'sheet Totals is hidden',
    ])
    const { entry } = await rerun(book.bytes, tests.slice(1))
    expect(entry?.outcome).toBe('agrees')
    expect(entry?.notes).toContain('Hidden: sheet Totals')
    expect(entry?.notes).toContain('Sheet Register: column B hidden or too narrow to read')
  })

  it('differs by a total typed over or counted otherwise', async () => {
    const path = new PackageText(register).sheet('Totals')
    const typed = new PackageText(register).edit(path, /(<c r="D5"[^>]*>)<f>.*?<\/f>/s, '$1').bytes
    expect((await rerun(typed)).entry?.differences.map(({ cell }) => cell)).toEqual(['Totals!D5'])
    const stored = new PackageText(register).edit(
      path,
      /(<c r="D5"[^>]*>.*?<v>)(\d+)/s,
      (_, head, n) => `${head}${Number(n) + 1}`,
    ).bytes
    expect((await rerun(stored)).entry?.differences).toMatchObject([{ cell: 'Totals!D5', kind: 'cell' }])
  })

  it('differs where a test given has no row, and says which', async () => {
    const { entry } = await rerun(await registerOf(tests.slice(1)))
    expect(entry?.outcome).toBe('differs')
    expect(entry?.differences).toHaveLength(1)
    expect(entry?.differences[0]).toMatchObject({ recorded: null, expected: tests[0]?.file })
    expect(entry?.differences[0]?.label).toMatch(/has no row$/)
  })

  it('says how many rows could not be checked, and is passed over where none could', async () => {
    const { entry } = await rerun(register, tests.slice(0, 5))
    expect(entry?.outcome).toBe('agrees')
    expect(entry?.why).toMatch(/; 3 rows not checked, because their files are not among those given$/)
    const { report } = await rerun(register, [])
    expect(report.tests).toEqual([])
    expect(report.passedOver).toEqual(['register.xlsx'])
  })
})
