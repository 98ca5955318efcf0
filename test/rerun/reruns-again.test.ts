import { parseRecord } from '@draughtbook/shared-calc'
import {
  makeRerunReport,
  type RerunTest,
  rerunFile,
  writeRerunWorkbook,
} from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { beforeAll, describe, expect, it } from 'vitest'
import { makeKeyPair } from '../../service/src/signature/keys'
import { signerOf, verifierOf } from '../../service/src/signature/sign'
import { inventedRecord } from '../archive/invented-record'
import { recalculate } from '../support/libreoffice'
import { asSavedByAnother } from './support/hidden-changes'
import { PackageText } from './support/package'

let tests: readonly RerunTest[]
let written: Uint8Array
const AS_OF = '2030-01-15'
const NAMES = ['archive/2026/first.xlsx', 'archive/2026/second one.xlsx', 'archive/2026/cut.xlsx']

beforeAll(async () => {
  const whole = await Promise.all([1, 2].map((n) => writeSummaryWorkbook(parseRecord(inventedRecord(n)))))
  const files = [whole[0], whole[1], whole[0]?.slice(0, 9000)]
  const found = await Promise.all(NAMES.map((name, i) => rerunFile(files[i] ?? new Uint8Array(), name)))
  tests = found.flat()
  written = await writeRerunWorkbook(await makeRerunReport(tests, AS_OF))
})

/** What a later re-run of the same files says of a re-run report. */
async function again(bytes: Uint8Array, given = tests) {
  const report = await makeRerunReport([...given, ...(await rerunFile(bytes, 'RERUN.xlsx'))], '2031-03-02')
  const found = report.tests.find(({ file }) => file === 'RERUN.xlsx')
  return { report, found, lines: found?.differences.filter(({ rounding }) => !rounding) ?? [] }
}

/** A cell with another content. */
const holding = (b: PackageText, sheet: string, address: string, xml: string) =>
  b.edit(
    b.sheet(sheet),
    new RegExp(`<c r="${address}"([^>]*?)( t="\\w+")?(/>|>.*?</c>)`, 's'),
    (_, style = '') => `<c r="${address}"${style}${xml}</c>`,
  )
const text = (content: string) => ` t="inlineStr"><is><t>${content}</t></is>`

describe('a re-run report that is re-run with its files', () => {
  it('agrees as written, as saved by LibreOffice, and from another folder', async () => {
    expect((await again(written)).found).toMatchObject({ kind: 're-run', outcome: 'agrees' })
    expect((await again(await recalculate(written))).found).toMatchObject({ outcome: 'agrees' })
    const elsewhere = tests.map((test) => ({ ...test, file: `../audit/${test.file}` }))
    expect((await again(written, elsewhere)).found).toMatchObject({ outcome: 'agrees' })
  })

  it('agrees where the auditor has filled in the sign-off, and says which cells were', async () => {
    const book = new PackageText(written)
    const row = /<c r="A(\d+)"[^>]*><v>(\d+)<\/v><\/c><c r="B\1"/g
    const strings = book.text('xl/sharedStrings.xml').match(/<si>.*?<\/si>/gs) ?? []
    const auditor = [...book.text(book.sheet('Sign-off')).matchAll(row)].find(([, , index]) =>
      strings[Number(index)]?.includes('>Auditor<'),
    )?.[1]
    holding(book, 'Sign-off', `B${auditor}`, text('A. Sample'))
    const { found } = await again(asSavedByAnother(book).bytes)
    expect(found).toMatchObject({
      outcome: 'agrees',
      notes: [expect.stringContaining(`Sign-off!B${auditor}`)],
    })
  })

  it.each<[string, string | undefined, (b: PackageText) => unknown]>([
    ['an outcome typed over', 'Files!A4', (b) => holding(b, 'Files', 'A4', text('exactly as issued'))],
    [
      'the count of the headline',
      "'Sign-off'!A2",
      (b) => holding(b, 'Sign-off', 'A2', text('0 of 3 to check')),
    ],
    ['the date of the re-run', "'Sign-off'!B4", (b) => holding(b, 'Sign-off', 'B4', text('long ago'))],
    ['its calculation version', "'Sign-off'!B5", (b) => holding(b, 'Sign-off', 'B5', text('9.9.9'))],
    ['a count of cells compared', 'Files!K5', (b) => holding(b, 'Files', 'K5', '><v>9</v>')],
    [
      'an outcome in white letters',
      'Files!A4',
      (b) => b.refont('Files', 'A4', (font) => font.replace(/<color [^>]*>/, '<color rgb="FFFFFFFF"/>')),
    ],
    ['a row hidden', 'Files!A4', (b) => b.edit(b.sheet('Files'), '<row r="4"', '<row r="4" hidden="1"')],
    [
      'the sheet of differences hidden',
      undefined,
      (b) =>
        b.edit('xl/workbook.xml', /name="Differences" state="visible"/, 'name="Differences" state="hidden"'),
    ],
  ])('differs, and names the place: %s', async (_, cell, change) => {
    for (const saved of [(b: PackageText) => b, asSavedByAnother]) {
      const book = new PackageText(written)
      change(book)
      const { found, lines } = await again(saved(book).bytes)
      expect(found?.outcome).toBe('differs')
      if (cell === undefined) expect(JSON.stringify(lines)).toContain('Differences')
      else expect(lines.map((one) => one.cell)).toContain(cell)
    }
  })

  it('cannot be compared where only some of its files are given, and is passed over where none is', async () => {
    const { found } = await again(written, tests.slice(0, 1))
    expect(found).toMatchObject({
      outcome: 'cannot be read',
      why: expect.stringContaining('second one.xlsx'),
    })
    const alone = await again(written, [])
    expect([alone.found, alone.report.passedOver]).toEqual([undefined, ['RERUN.xlsx']])
  })

  it('is not in the next report where it agrees, so that one written over the last agrees too', async () => {
    let bytes = written
    for (let round = 0; round < 3; round += 1) {
      const { report, found } = await again(bytes)
      expect(found?.outcome).toBe('agrees')
      bytes = await writeRerunWorkbook(report)
    }
  })
})

describe('a re-run report of signed tests', () => {
  const firm = makeKeyPair()
  const signed = async (options = {}) =>
    rerunFile(
      await writeSummaryWorkbook(parseRecord(inventedRecord(3)), { sign: signerOf(firm.privateKey) }),
      'signed.xlsx',
      options,
    )
  const withKey = () => signed({ verify: verifierOf([firm.publicKey]) })
  const reportOf = async (of: readonly RerunTest[]) => writeRerunWorkbook(await makeRerunReport(of, AS_OF))

  it('agrees where it is re-run with the same keys, or with none as before', async () => {
    for (const rerun of [withKey, signed])
      expect((await again(await reportOf(await rerun()), await rerun())).found?.outcome).toBe('agrees')
  })

  it('made with a key and re-run without it, is not said to differ: the key to give is named', async () => {
    const { found } = await again(await reportOf(await withKey()), await signed())
    expect(found).toMatchObject({
      outcome: 'cannot be read',
      why: `it was made with the public key ${firm.keyId}: give that key as well`,
      differences: [],
    })
  })

  it('made without a key and re-run with it, names the key to leave out', async () => {
    const { found } = await again(await reportOf(await signed()), await withKey())
    expect(found?.why).toBe(`it was made without the public key ${firm.keyId}: leave that key out`)
  })

  it('with another state or key typed over, differs', async () => {
    for (const typed of ['invalid', 'valid (0123)']) {
      const book = new PackageText(await reportOf(await withKey()))
      holding(book, 'Files', 'I4', text(typed))
      const { found, lines } = await again(asSavedByAnother(book).bytes, await withKey())
      expect(found?.outcome).toBe('differs')
      expect(lines.map(({ cell }) => cell)).toContain('Files!I4')
    }
  })
})
