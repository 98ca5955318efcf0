import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { patchText } from '../../addin/src/patch/patch-text.js'
import type { CellPatch } from '../../addin/src/patch/patch-workbook.js'

const at = (row: number, column: number, content: CellPatch['content']): CellPatch => ({
  sheet: 'log',
  row,
  column,
  content,
})
const utf8 = (text: string) => new TextEncoder().encode(text)
const patched = (text: string, patches: CellPatch[], decimal: '.' | ',' = ',') =>
  new TextDecoder('utf-8', { ignoreBOM: true }).decode(patchText(utf8(text), patches, decimal).bytes)

const LOG = 'Druck [Pa];"Fluss; m³/h";Bemerkung\r\n-50,1;100;"sagte ""gut"""\r\n -41,0 ;  80;\r\n'

describe('a text log with changed cells', () => {
  it('keeps separator, quotation marks, blanks, line ends and the decimal sign; all else stays letter by letter', () => {
    expect(patched(LOG, [at(2, 1, -49.5)])).toBe(LOG.replace('-50,1', '-49,5'))
    expect(patched(LOG, [at(3, 1, -40.5)])).toBe(LOG.replace(' -41,0 ', ' -40,5 '))
    expect(patched(LOG, [at(2, 3, 'so "la la"')])).toBe(LOG.replace('sagte ""gut""', 'so ""la la""'))
    expect(patched(LOG, [at(2, 2, undefined)])).toBe(LOG.replace(';100;', ';;'))
    expect(patched(LOG, [at(3, 3, 'a;b')])).toBe(LOG.replace('80;', '80;"a;b"'))
  })

  it('adds fields and rows where there were none', () => {
    expect(patched('a;b\n1;2\n3', [at(3, 2, 4)])).toBe('a;b\n1;2\n3;4')
    expect(patched('a;b\n1;2\n', [at(3, 2, 4)])).toBe('a;b\n1;2\n;4')
    expect(patched('a;b\n1;2\n', [at(5, 1, 'end')])).toBe('a;b\n1;2\n\n\nend')
    expect(patched('a;b\r\n1;2', [at(3, 1, 3)])).toBe('a;b\r\n1;2\r\n3')
  })

  it('is read by another reader of such files with the new values and no other change', () => {
    const edits = [at(2, 1, -49.5), at(3, 2, 81), at(4, 3, 'late')]
    const before = Papa.parse<string[]>(LOG, { delimiter: ';' }).data
    const after = Papa.parse<string[]>(patched(LOG, edits), { delimiter: ';' }).data
    const expected = before.map((row) => [...row])
    expected[1] = ['-49,5', '100', 'sagte "gut"']
    expected[2] = [' -41,0 ', '  81', '']
    expected[3] = ['', '', 'late']
    expect(after).toEqual(expected)
  })

  it.each([
    ['UTF-8 with its mark', Uint8Array.of(0xef, 0xbb, 0xbf), 'utf8'],
    ['UTF-16', Uint8Array.of(0xff, 0xfe), 'utf16le'],
  ] as const)('keeps %s', (_, mark, encoding) => {
    const file = (text: string) => Buffer.concat([mark, Buffer.from(text, encoding)])
    const { bytes } = patchText(file(LOG), [at(2, 1, -49.5)], ',')
    expect(Buffer.from(bytes).equals(file(LOG.replace('-50,1', '-49,5')))).toBe(true)
  })

  it('keeps Windows-1252, and leaves a cell whose text it cannot hold', () => {
    const file = (text: string) => Buffer.from(text, 'latin1')
    const { bytes, left } = patchText(file(LOG), [at(2, 1, -49.5), at(2, 3, 'größer'), at(3, 3, 'Δ')], ',')
    expect(
      Buffer.from(bytes).equals(file(LOG.replace('-50,1', '-49,5').replace('sagte ""gut""', 'größer'))),
    ).toBe(true)
    expect(left).toEqual([{ cell: 'log!C3', why: 'the file is written in Windows-1252, which has no "Δ"' }])
  })

  it('leaves a line that states the separator where it stands', () => {
    const text = 'sep=|\na|b\n1|2\n'
    expect(patched(text, [at(3, 2, 2.5)], '.')).toBe('sep=|\na|b\n1|2.5\n')
  })
})
