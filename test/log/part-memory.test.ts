import { crc32 as published } from 'node:zlib'
import { openLog } from '@draughtbook/shared-calc/log'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crc32 } from '../../shared-calc/src/log/container/crc32'
import { patchEntry, rawBook } from './hostile/raw-book'

const SHEET = '<sheetData><row r="1"><c r="A1" s="0"><v>50</v></c></row></sheetData>'
const styles = (code: string) =>
  `<numFmts><numFmt numFmtId="164" formatCode="${code}"/></numFmts><cellXfs><xf numFmtId="164"/></cellXfs>`
/** Stored, not packed, so that a byte of the file is a byte of the part. */
const book = (code: string) => rawBook({ sheet: SHEET, styles: styles(code) }, 0)
const formatIn = (bytes: Uint8Array) => openLog(bytes, 'log.xlsx').sheet('Log')?.at(0, 0)?.format

/** The same file with another letter in the number format; directory and length stay as they were. */
function altered(bytes: Uint8Array, from: string, to: string): Uint8Array {
  const copy = bytes.slice()
  const at = new TextDecoder('latin1').decode(copy).indexOf(from)
  copy.set(new TextEncoder().encode(to), at)
  return copy
}

describe('parts remembered from one workbook to the next', () => {
  it('give each workbook its own formats, however the workbooks come', () => {
    const codes = ['0.0', '0.00', '0.0 K', 'dd.mm.yyyy']
    const books = codes.map(book)
    for (const turn of [0, 1, 2, 0, 3, 3, 1, 0]) expect(formatIn(books[turn] as Uint8Array)).toBe(codes[turn])
  })

  it('are not taken for a part that only claims to be the same', () => {
    const good = book('0.0 P')
    expect(formatIn(good)).toBe('0.0 P')
    const forged = altered(good, '0.0 P', '0.0 C')
    expect(() => formatIn(forged)).toThrow(/checksum does not match/)
    // With the checksum of the forged bytes it is a part of its own.
    const part = new TextEncoder().encode(
      new TextDecoder().decode(forged).match(/<\?xml[^>]*\?><styleSheet.*?<\/styleSheet>/)?.[0],
    )
    const honest = patchEntry(forged, 'xl/styles.xml', (view, at) =>
      view.setUint32(at + 16, published(part), true),
    )
    expect(formatIn(honest)).toBe('0.0 C')
  })

  it('do not outlive what a damaged workbook said in between', () => {
    const good = book('0.000')
    const broken = rawBook({ sheet: SHEET, styles: '<cellXfs><xf numFmtId="164"/>' }, 0)
    expect(() => formatIn(broken)).toThrow(/not well-formed/)
    expect(formatIn(good)).toBe('0.000')
    expect(() => formatIn(broken)).toThrow(/not well-formed/)
  })
})

describe('the checksum of a part', () => {
  it('is that of zlib, in one go or piece by piece', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat(300), (bytes, cut) => {
        expect(crc32(bytes)).toBe(published(bytes))
        expect(crc32(bytes.subarray(cut), crc32(bytes.subarray(0, cut)))).toBe(published(bytes))
      }),
    )
  })

  it('is CBF43926 for 123456789, the check value of ISO 3309 (value from memory)', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
  })
})
