import { strToU8, zipSync } from 'fflate'
import type { HostileFile } from './hostile-files'
import { rawBook } from './raw-book'
import { cell, rawSpreadsheet } from './raw-spreadsheet'

const entities = `<!DOCTYPE a [<!ENTITY a "lol">${Array.from('bcdefghi', (letter, index) => `<!ENTITY ${letter} "${`&${'abcdefgh'[index]};`.repeat(10)}">`).join('')}]>`
const row = (inside: string, attributes = '') => `<table:table-row ${attributes}>${inside}</table:table-row>`
const ods = (name: string, code: string, says: RegExp, make: () => Uint8Array): HostileFile => ({
  name: `an .ods ${name}`,
  fileName: 'log.ods',
  make,
  code,
  says,
})

/** OpenDocument files that attack, lie or are none. */
export const hostileSpreadsheets: readonly HostileFile[] = [
  ods('of one filled row repeated a million times', 'too-many-cells', /450000 cells/, () =>
    rawSpreadsheet({ rows: row(cell(1), 'table:number-rows-repeated="1048576"') }),
  ),
  ods(
    'of one filled cell repeated over all columns of a thousand rows',
    'too-many-cells',
    /450000 cells/,
    () =>
      rawSpreadsheet({
        rows: row(cell(1, 'table:number-columns-repeated="16384"'), 'table:number-rows-repeated="1000"'),
      }),
  ),
  ods('with rows beyond the last', 'damaged-file', /beyond the last row/, () =>
    rawSpreadsheet({ rows: row('', 'table:number-rows-repeated="1048576"') + row(cell(1)) }),
  ),
  ods('with cells beyond the last column', 'damaged-file', /beyond the last column/, () =>
    rawSpreadsheet({
      rows: row(`<table:table-cell table:number-columns-repeated="16384"/>${cell(1)}`),
    }),
  ),
  ods('with a merged block wider than the sheet', 'damaged-file', /merged block/, () =>
    rawSpreadsheet({ rows: row(cell(1, 'table:number-columns-spanned="99999"')) }),
  ),
  ods('of 60,000 merged blocks', 'too-many-cells', /merged blocks/, () =>
    rawSpreadsheet({
      rows: Array.from({ length: 60_000 }, (_, index) =>
        row(cell((index * 7919) % 104_729, 'table:number-columns-spanned="2"')),
      ).join(''),
    }),
  ),
  ods('with entities inside entities', 'document-type', /document type/, () =>
    rawSpreadsheet({ prolog: entities, rows: row(cell('&i;')) }),
  ),
  ods('whose content unpacks to 100 MB', 'too-large', /unpacks to 100 MB/, () =>
    rawSpreadsheet({ rows: ' '.repeat(100 * 1024 * 1024) }, 1),
  ),
  ods('nested deeply', 'damaged-file', /too deeply/, () =>
    rawSpreadsheet({
      rows: '<table:table-row-group>'.repeat(5000) + '</table:table-row-group>'.repeat(5000),
    }),
  ),
  ods('of 600 sheets', 'too-many-sheets', /500 sheets/, () =>
    rawSpreadsheet({ more: '<table:table table:name="s"/>'.repeat(600) }),
  ),
  ods('with a text of a million letters', 'too-large', /32767 characters/, () =>
    rawSpreadsheet({ rows: row(cell('x'.repeat(1_000_000))) }),
  ),
  ods('with a million spaces by number', 'not-found', /no table of pressures/, () =>
    rawSpreadsheet({ rows: row(cell('a<text:s text:c="999999999"/>b')) }),
  ),
  ods('of a hundred thousand cell formats', 'too-many-cells', /cell formats/, () =>
    rawSpreadsheet({
      styles: Array.from(
        { length: 100_000 },
        (_, index) => `<style:style style:family="table-cell" style:name="s${index}"/>`,
      ).join(''),
    }),
  ),
  ods('with a number that is none', 'damaged-file', /cannot be read/, () =>
    rawSpreadsheet({ rows: row('<table:table-cell office:value-type="float" office:value="12,5"/>') }),
  ),
  ods('with a day that is none', 'damaged-file', /cannot be read/, () =>
    rawSpreadsheet({
      rows: row('<table:table-cell office:value-type="date" office:date-value="2026-02-30"/>'),
    }),
  ),
  ods('with names of its own for everything', 'damaged-file', /not in the OpenDocument/, () =>
    rawSpreadsheet({
      names: 'xmlns:office="a" xmlns:table="b" xmlns:text="c" xmlns:style="d" xmlns:number="e"',
    }),
  ),
  ods('that is protected by a password', 'encrypted', /without the password/, () =>
    rawSpreadsheet({
      manifest: '<m:manifest xmlns:m="x"><m:file-entry><m:encryption-data/></m:file-entry></m:manifest>',
    }),
  ),
  ods('that is a text document', 'wrong-extension', /other than a spreadsheet/, () =>
    rawSpreadsheet({ type: 'application/vnd.oasis.opendocument.text' }),
  ),
  ods('that is an .xlsx', 'wrong-extension', /\.xlsx workbook.*rename it to \.xlsx/, () => rawBook({})),
  ods('that is a zip of other things', 'wrong-extension', /zip archive/, () =>
    zipSync({ 'a.txt': strToU8('a') }),
  ),
  ods('cut short', 'damaged-file', /incomplete/, () =>
    rawSpreadsheet({ rows: row(cell(1)).repeat(500) }).subarray(0, 400),
  ),
  ods('that is text', 'wrong-extension', /text, not a workbook/, () => strToU8('a,b\n1,2\n')),
  {
    ...ods('', 'wrong-extension', /rename it to \.ods/, () => rawSpreadsheet({})),
    name: 'an .ods called .xlsx',
    fileName: 'log.xlsx',
  },
]
