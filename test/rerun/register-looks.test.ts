import { readFile } from 'node:fs/promises'
import { makeRegister, readLines, withOrders, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { makeRerunReport, type RerunTest, rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { editInLibreOffice } from '../support/edit-in-libreoffice'
import { recalculate } from '../support/libreoffice'
import { PackageText } from './support/package'

const tests: { file: string; bytes: Uint8Array; rerun: RerunTest[] }[] = []
let register: Uint8Array
/** The same, saved by LibreOffice: nothing but what is seen can be compared there. */
let saved: Uint8Array

/** Four plots, one of them of the month before; order, fee, a month of an earlier register, and a file that could not be read. */
beforeAll(async () => {
  for (const seed of [1, 2, 3, 4]) {
    const file = `court/t${seed}.xlsx`
    const date = seed === 4 ? '2026-09-12' : `2026-10-1${seed}`
    const bytes = await writeSummaryWorkbook(inventedRecord(seed, { plot: `Plot ${seed}`, date }))
    tests.push({ file, bytes, rerun: await rerunFile(bytes, file) })
  }
  const read = tests.flatMap(({ file, bytes }) => readLines(bytes, file).lines)
  const { lines } = withOrders(read, [
    { testNumber: read[0]?.testNumber ?? '', orderNumber: '0042', fee: 312.5 },
  ])
  register = await writeRegisterWorkbook(
    makeRegister(lines, [{ file: 'court/cut.xlsx', why: 'the file is incomplete or damaged' }], {
      asOf: '2026-11-26',
      month: '2026-10',
      previous: [{ month: '2026-08', tests: 3, counting: 3, meets: 2, misses: 1, from: 'old/2026 08.xlsx' }],
    }),
    { seenFrom: (file) => `../${file}` },
  )
  saved = await recalculate(register)
})

async function rerun(bytes: Uint8Array, given = tests) {
  const report = await makeRerunReport(
    [...given.flatMap((one) => one.rerun), ...(await rerunFile(bytes, 'register.xlsx'))],
    '2026-11-26',
  )
  return report.tests.find(({ file }) => file === 'register.xlsx')
}

const real = (entry: RerunTest | undefined) => entry?.differences.filter(({ rounding }) => !rounding)

describe('a register made again from its tests', () => {
  it('agrees as written and as saved by LibreOffice, and says what it could not make again', async () => {
    for (const bytes of [register, saved]) {
      const entry = await rerun(bytes)
      expect(real(entry)).toEqual([])
      expect(entry?.why).toMatch(/^made again from its 3 tests, every figure and everything visible agrees/)
      expect(entry?.notes.join()).toMatch(/^Orders and fees, .* are taken from the register itself$/)
    }
  })

  it('says why looks were not compared where the test of another month is not given', async () => {
    const entry = await rerun(register, tests.slice(0, 3))
    expect(entry?.outcome).toBe('agrees')
    expect(entry?.notes.join()).toContain(
      '1 test of other months, by which it was made, is not among those given',
    )
  })

  it('agrees where its rows were sorted, and says that they were', async () => {
    const table = { sheet: 'Register', heads: 6, lastRow: 9, lastColumn: 35 }
    const sorted = await editInLibreOffice(register, table, [
      { do: 'sort', by: [{ column: 3, ascending: false }] },
    ])
    const entry = await rerun(sorted)
    expect(real(entry)).toEqual([])
    expect(entry?.notes).toContain('Its rows were sorted after it was written')
  }, 120_000)

  const issuedBefore: Readonly<Record<string, readonly string[]>> = {
    '1.4.0': ['both directions.xlsx', 'misses its target.xlsx', 'not valid.xlsx'],
    '1.6.0': ['both directions.xlsx', 'misses its target.xlsx'],
  }
  const earlier = async (version: string) => ({
    bytes: new Uint8Array(await readFile(`test/rerun/earlier/register-${version}.xlsx`)),
    tests: await Promise.all(
      (issuedBefore[version] ?? []).map(async (file) => {
        const bytes = new Uint8Array(await readFile(`test/archive/golden-${version}/${file}`))
        return { file, bytes, rerun: await rerunFile(bytes, file) }
      }),
    ),
  })

  it.each(Object.keys(issuedBefore))(
    'agrees where version %s, which names no version in it, has written it, and says what is not checked',
    async (version) => {
      const { bytes, tests: old } = await earlier(version)
      const entry = await rerun(bytes, old)
      expect(real(entry)).toEqual([])
      expect(entry?.outcome).toBe('agrees')
      expect(entry?.notes?.join()).toContain('Not checked, because it names no calculation version')
      expect(entry?.notes?.join()).toContain('all other cells and sheets, comments, what is hidden')
    },
  )

  it.each(Object.keys(issuedBefore))(
    'of version %s differs where the mean shown is replaced by the worst',
    async (version) => {
      const { bytes, tests: old } = await earlier(version)
      const book = new PackageText(bytes)
      book.edit(book.sheet('Register'), /(<f>(?:(?!<\/f>).)*)SUBTOTAL\(101/, '$1SUBTOTAL(104')
      const entry = await rerun(book.bytes, old)
      expect(entry?.outcome).toBe('differs')
      expect(real(entry)?.map(({ label }) => label)).toContain('formula of the line "shown"')
    },
  )

  const sheet = (book: PackageText, name: string, from: string | RegExp, to: string) =>
    book.edit(book.sheet(name), from, to)
  const restyled = (
    book: PackageText,
    name: string,
    address: string,
    list: 'fonts' | 'fills',
    style: string,
  ) => {
    const id = book.addTo(list, style)
    const key = list === 'fonts' ? 'fontId' : 'fillId'
    return book.restyle(name, address, (xf) => xf.replace(new RegExp(`${key}="\\d+"`), `${key}="${id}"`))
  }

  // Kinds of change that leave rows, totals and formulas as they were.
  const changes: readonly (readonly [string, (book: PackageText) => unknown, string])[] = [
    [
      'a row hidden',
      (b) =>
        sheet(
          b,
          'Register',
          /<row r="8"([^>]*?)(?: hidden="false")?( customHeight[^>]*)>/,
          '<row r="8"$1 hidden="1"$2>',
        ),
      'row 8 is hidden',
    ],
    [
      'colours of verdicts taken away',
      (b) =>
        sheet(
          b,
          'Register',
          /<conditionalFormatting(?:(?!<\/conditionalFormatting>).)*<\/conditionalFormatting>/s,
          '',
        ),
      'conditional format',
    ],
    [
      'the printed area',
      (b) =>
        b.edit(
          'xl/workbook.xml',
          /Register!\$A\$1:\$R\$\d+|'Register'!\$A\$1:\$R\$\d+|(?<=apos;Register&apos;!)\$A\$1:\$R\$\d+/,
          (found) => found.replace(/\d+$/, '7'),
        ),
      'print area of sheet Register',
    ],
    [
      'a header in print',
      (b) =>
        sheet(
          b,
          'Register',
          /<headerFooter\b[^>]*>(?:<oddHeader>.*?<\/oddHeader>)?/s,
          '<headerFooter><oddHeader>&amp;CCertified</oddHeader>',
        ),
      'print set-up of sheet Register: header',
    ],
    [
      'the scale of a chart',
      (b) => b.edit(b.chart, /<c:orientation val="minMax"\/>/, '<c:orientation val="maxMin"/>'),
      'horizontal axis, direction',
    ],
    [
      'columns of a chart that are not drawn',
      (b) =>
        b.edit(
          b.chart,
          /(<c:ser>.*?<c:spPr>)(?:(?!<\/c:spPr>).)*/s,
          (_, head = '') => `${head}<a:noFill/><a:ln><a:noFill/></a:ln>`,
        ),
      'fill of the columns',
    ],
    [
      'numbers shown over and over, so that 3 is read as 333',
      (b) =>
        b.restyle('Register', 'G7', (xf) =>
          xf.replace(/<alignment[^>]*\/>/, '<alignment horizontal="fill"/>'),
        ),
      'alignment',
    ],
    // LibreOffice writes no theme; a program then takes the usual one, whose first colour is white.
    ...[
      ['the first colour of the theme', 'theme="0"'],
      ['a light yellow of the palette', 'indexed="26"'],
    ].map(
      ([name, colour]) =>
        [
          `a figure in ${name}`,
          (b: PackageText) =>
            restyled(
              b,
              'Register',
              'G7',
              'fonts',
              `<font><sz val="10"/><color ${colour}/><name val="Calibri"/></font>`,
            ),
          'Register!G7',
        ] as const,
    ),
    ['a heading of sheet To do', (b) => b.edit('xl/sharedStrings.xml', /To do(?=<)/, 'Done'), 'To do'],
    [
      'a link to another file',
      (b) => b.edit(b.sheet('Register').replace(/([^/]+)$/, '_rels/$1.rels'), /t2\.xlsx/, 'other.xlsx'),
      'links',
    ],
    [
      'a message at a cell',
      (b) =>
        sheet(
          b,
          'Register',
          /(?=<hyperlinks>)/,
          '<dataValidations count="1"><dataValidation type="none" showInputMessage="1" prompt="0.31" sqref="G7"/></dataValidations>',
        ),
      'validation',
    ],
    [
      'a named value',
      (b) =>
        b.edit(
          'xl/workbook.xml',
          '</definedNames>',
          '<definedName name="certified">0.31</definedName></definedNames>',
        ),
      'certified',
    ],
  ]

  // What an office does to a register it works with: the auditor reads it in the list, and the register still agrees.
  const marks: typeof changes = [
    [
      'a text of another colour',
      (b) =>
        restyled(
          b,
          'Totals',
          'A5',
          'fonts',
          '<font><b/><sz val="10"/><color rgb="FFC00000"/><name val="Calibri"/></font>',
        ),
      'text colour',
    ],
    [
      'a cell coloured like one that meets',
      (b) =>
        restyled(
          b,
          'Register',
          'B7',
          'fills',
          '<fill><patternFill patternType="solid"><fgColor rgb="FF00B050"/></patternFill></fill>',
        ),
      'background colour',
    ],
  ]

  it.each(marks)(
    'agrees in spite of %s, and names its cell, as written and as saved by LibreOffice',
    async (_, change, label) => {
      for (const given of [register, saved]) {
        const book = new PackageText(given)
        change(book)
        const entry = await rerun(book.bytes)
        expect(entry?.outcome).toBe('agrees')
        const found = real(entry) ?? []
        expect(found.map((one) => one.label)).toEqual([label])
        expect(entry?.why).toContain(found[0]?.cell)
      }
    },
  )

  it('differs where a cell was coloured and its figure was changed too, and names both', async () => {
    const [mark] = marks.slice(-1)
    const book = new PackageText(register)
    mark?.[1](book)
    book.edit(book.sheet('Register'), /(<c r="N7"[^>]*><v>)[^<]*/, '$10.31')
    const entry = await rerun(book.bytes)
    expect(entry?.outcome).toBe('differs')
    expect(real(entry)?.map(({ cell }) => cell)).toEqual(
      expect.arrayContaining(['Register!B7', 'Register!N7']),
    )
  })

  it.each(changes)('differs by %s, as written and as saved by LibreOffice', async (_, change, label) => {
    for (const given of [register, saved]) {
      const book = new PackageText(given)
      change(book)
      const entry = await rerun(book.bytes)
      expect(entry?.outcome).toBe('differs')
      const found =
        real(entry)?.map((one) => `${one.label} ${one.cell} ${one.recorded} ${one.expected}`) ?? []
      expect(found.join('\n')).toContain(label)
    }
  })
})
