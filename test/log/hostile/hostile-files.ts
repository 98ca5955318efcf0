import { strToU8, zipSync } from 'fflate'
import { patchEntry, rawBook, rawParts } from './raw-book'

export interface HostileFile {
  name: string
  fileName: string
  make(): Uint8Array
  /** Code of the error it must end in. */
  code: string
  says: RegExp
}

const MEGABYTE = 1024 * 1024
const SHEET = 'xl/worksheets/sheet1.xml'
const blanks = (megabytes: number) => ' '.repeat(megabytes * MEGABYTE)
const utf16 = (text: string) => Array.from(text).flatMap((letter) => [letter.charCodeAt(0), 0])

/** A compound file: its mark, and a directory entry under a name. */
function compound(entry: string): Uint8Array {
  const bytes = new Uint8Array(4096)
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1])
  bytes.set(utf16(entry), 1024)
  return bytes
}

/** Two parts over the same packed bytes, as overlapping bombs are built. */
function overlapping(): Uint8Array {
  const zip = rawBook(
    { sheet: `<!--${'x'.repeat(400_000)}-->`, more: { 'xl/a.xml': new Uint8Array(300_000) } },
    0,
  )
  return patchEntry(zip, 'xl/a.xml', (view, at) => {
    view.setUint32(at + 20, zip.length - 200, true)
    view.setUint32(at + 24, zip.length - 200, true)
  })
}

const entities = `<!DOCTYPE worksheet [<!ENTITY a "lol">${Array.from('bcdefghi', (letter, index) => `<!ENTITY ${letter} "${`&${'abcdefgh'[index]};`.repeat(10)}">`).join('')}]>`

export const hostileFiles: readonly HostileFile[] = [
  {
    name: 'a zip bomb that says so',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: blanks(100) }, 1),
    code: 'too-large',
    says: /unpacks to 100 MB/,
  },
  {
    name: 'a zip bomb of moderate size and immoderate ratio',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: blanks(20) }, 9),
    code: 'compression-bomb',
    says: /times its size/,
  },
  {
    name: 'a zip bomb that lies about its size',
    fileName: 'log.xlsx',
    make: () =>
      patchEntry(rawBook({ sheet: blanks(100) }, 1), SHEET, (view, at) =>
        view.setUint32(at + 24, 1000, true),
      ),
    code: 'compression-bomb',
    says: /more than the 1000 bytes it declares/,
  },
  {
    name: 'many parts that are large together',
    fileName: 'log.xlsx',
    make: () => {
      const zip = rawBook({
        more: Object.fromEntries(
          Array.from({ length: 9 }, (_, index) => [`xl/media/${index}.bin`, new Uint8Array(1)]),
        ),
      })
      return Array.from({ length: 9 }).reduce<Uint8Array>(
        (bytes, _, index) =>
          patchEntry(bytes, `xl/media/${index}.bin`, (view, at) =>
            view.setUint32(at + 24, 200 * MEGABYTE, true),
          ),
        zip,
      )
    },
    code: 'compression-bomb',
    says: /times its size/,
  },
  {
    name: 'parts that overlap',
    fileName: 'log.xlsx',
    make: overlapping,
    code: 'compression-bomb',
    says: /overlap/,
  },
  {
    name: '2,500 parts',
    fileName: 'log.xlsx',
    make: () =>
      rawBook({
        more: Object.fromEntries(
          Array.from({ length: 2500 }, (_, index) => [`x/${index}`, new Uint8Array(1)]),
        ),
      }),
    code: 'too-many-parts',
    says: /at most 2000/,
  },
  {
    name: 'a sheet that says it reaches to XFD1048576',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: '<dimension ref="A1:XFD1048576"/><sheetData/>' }),
    code: 'sheet-too-wide',
    says: /A1:XFD1048576.*delete the empty formatted/,
  },
  {
    name: 'a row number of four thousand million',
    fileName: 'log.xlsx',
    make: () =>
      rawBook({ sheet: '<sheetData><row r="4000000000"><c r="A4000000000"><v>1</v></c></row></sheetData>' }),
    code: 'damaged-file',
    says: /row number 4000000000/,
  },
  {
    name: 'a column beyond XFD',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: '<sheetData><row r="1"><c r="XFE1"><v>1</v></c></row></sheetData>' }),
    code: 'damaged-file',
    says: /XFE1 is out of place/,
  },
  {
    name: 'entities that expand to 300 million letters',
    fileName: 'log.xlsx',
    make: () =>
      rawBook({ prolog: entities, sheet: '<sheetData><row><c t="str"><v>&i;</v></c></row></sheetData>' }),
    code: 'document-type',
    says: /declares a document type/,
  },
  {
    name: '10,000 sheets',
    fileName: 'log.xlsx',
    make: () =>
      rawBook({
        sheets: Array.from(
          { length: 10_000 },
          (_, index) => `<sheet name="S${index}" sheetId="${index + 1}" r:id="rId1"/>`,
        ).join(''),
      }),
    code: 'too-many-sheets',
    says: /more than 500 sheets/,
  },
  {
    name: 'elements nested 100,000 deep',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: '<x>'.repeat(100_000) }),
    code: 'damaged-file',
    says: /nests its elements/,
  },
  {
    name: 'four million empty elements',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: `<sheetData>${'<x/>\n'.repeat(4_000_000)}</sheetData>` }, 0),
    code: 'too-many-cells',
    says: /more than 2000000 elements/,
  },
  {
    name: 'a million cells',
    fileName: 'log.xlsx',
    make: () =>
      rawBook(
        { sheet: `<sheetData>${`<row>${'<c><v>1</v></c>'.repeat(100)}</row>`.repeat(10_000)}</sheetData>` },
        0,
      ),
    code: 'too-many-cells',
    says: /more than 450000 cells are filled \(reached at Log!/,
  },
  {
    name: '300,000 shared texts',
    fileName: 'log.xlsx',
    make: () =>
      rawBook(
        {
          sheet: '<sheetData><row><c t="s"><v>0</v></c></row></sheetData>',
          strings: '<si><t>a</t></si>'.repeat(300_000),
        },
        0,
      ),
    code: 'too-many-cells',
    says: /separate texts/,
  },
  {
    name: '100,000 merged blocks',
    fileName: 'log.xlsx',
    make: () =>
      rawBook(
        { sheet: `<sheetData/><mergeCells>${'<mergeCell ref="A1:B2"/>'.repeat(100_000)}</mergeCells>` },
        0,
      ),
    code: 'too-many-cells',
    says: /merged blocks/,
  },
  {
    name: '30,000 names',
    fileName: 'log.xlsx',
    make: () =>
      rawBook(
        {
          names: `<definedNames>${'<definedName name="n">Log!$A:$A</definedName>'.repeat(30_000)}</definedNames>`,
        },
        0,
      ),
    code: 'too-many-cells',
    says: /names/,
  },
  {
    name: 'a text of ten million letters in a cell',
    fileName: 'log.xlsx',
    make: () =>
      rawBook(
        {
          sheet: `<sheetData><row r="1"><c r="B1" t="inlineStr"><is><t>${'a'.repeat(10_000_000)}</t></is></c></row></sheetData>`,
        },
        0,
      ),
    code: 'too-large',
    says: /32767 characters/,
  },
  {
    name: 'a cell that points to a text that is not there',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: '<sheetData><row r="1"><c r="B1" t="s"><v>7</v></c></row></sheetData>' }),
    code: 'damaged-file',
    says: /does not contain/,
  },
  {
    name: 'a stored number that is none',
    fileName: 'log.xlsx',
    make: () => rawBook({ sheet: '<sheetData><row r="1"><c r="B1"><v>1e999</v></c></row></sheetData>' }),
    code: 'damaged-file',
    says: /1e999/,
  },
  {
    name: 'a workbook cut short',
    fileName: 'log.xlsx',
    make: () => rawBook({}).slice(0, -60),
    code: 'damaged-file',
    says: /incomplete or damaged/,
  },
  {
    name: 'a workbook with a flipped bit',
    fileName: 'log.xlsx',
    make: () => {
      const bytes = rawBook({ sheet: '<sheetData><row r="1"><c r="A1"><v>50</v></c></row></sheetData>' }, 0)
      const at = new TextDecoder('latin1').decode(bytes).indexOf('<v>50')
      // 50 becomes 40: a digit changed in the file.
      bytes[at + 3] = '4'.charCodeAt(0)
      return bytes
    },
    code: 'damaged-file',
    says: /checksum/,
  },
  {
    name: 'a workbook whose sheet is missing',
    fileName: 'log.xlsx',
    make: () => {
      const { [SHEET]: _, ...rest } = rawParts({})
      return zipSync(rest)
    },
    code: 'damaged-file',
    says: /part of the sheet Log is missing/,
  },
  {
    name: 'bytes of nothing called .xlsx',
    fileName: 'log.xlsx',
    make: () => Uint8Array.from({ length: 2000 }, (_, at) => (at * 151 + 7) % 256),
    code: 'damaged-file',
    says: /damaged or is not a workbook/,
  },
  {
    name: 'text called .xlsx',
    fileName: 'log.xlsx',
    make: () => strToU8('a;b\n1;2\n'),
    code: 'wrong-extension',
    says: /text, not a workbook/,
  },
  {
    name: 'a workbook called .csv',
    fileName: 'log.csv',
    make: () => rawBook({}),
    code: 'wrong-extension',
    says: /named \.csv/,
  },
  {
    name: 'a zip archive called .xlsx',
    fileName: 'log.xlsx',
    make: () => zipSync({ 'a.txt': strToU8('a') }),
    code: 'wrong-extension',
    says: /zip archive/,
  },
  {
    name: 'a text document called .xlsx',
    fileName: 'log.xlsx',
    make: () => zipSync({ '[Content_Types].xml': strToU8('<a/>'), 'word/document.xml': strToU8('<a/>') }),
    code: 'wrong-extension',
    says: /text document/,
  },
  {
    name: 'a PDF',
    fileName: 'log.csv',
    make: () => strToU8('%PDF-1.7 …'),
    code: 'unsupported-format',
    says: /a PDF/,
  },
  {
    name: 'an old .xls',
    fileName: 'log.xls',
    make: () => compound('Workbook'),
    code: 'unsupported-format',
    says: /old \.xls workbook.*save it as \.xlsx/,
  },
  {
    name: 'an older .xls yet',
    fileName: 'log.xls',
    make: () => Uint8Array.of(9, 8, 16, 0, 0, 6, 5, 0),
    code: 'unsupported-format',
    says: /before 1997/,
  },
  {
    name: 'an encrypted workbook',
    fileName: 'log.xlsx',
    make: () => compound('EncryptedPackage'),
    code: 'encrypted',
    says: /without the password/,
  },
  {
    name: 'an .xlsb called .xlsx',
    fileName: 'log.xlsx',
    make: () => zipSync({ '[Content_Types].xml': strToU8('<a/>'), 'xl/workbook.bin': strToU8('x') }),
    code: 'unsupported-format',
    says: /\.xlsb/,
  },
  {
    name: 'an empty file',
    fileName: 'log.csv',
    make: () => new Uint8Array(),
    code: 'damaged-file',
    says: /empty/,
  },
  {
    name: 'a text file of 15 million separators',
    fileName: 'log.csv',
    make: () => strToU8(`a,b\n${','.repeat(15_000_000)}`),
    code: 'too-many-cells',
    says: /fields/,
  },
  {
    name: 'a text file of 40 MB',
    fileName: 'log.csv',
    make: () => new Uint8Array(40 * MEGABYTE).fill(65),
    code: 'too-large',
    says: /at most 32 MB/,
  },
  {
    name: 'a text file with an open quotation mark',
    fileName: 'log.csv',
    make: () => strToU8(`a,b\n"${'1,2\n'.repeat(300_000)}`),
    code: 'damaged-file',
    says: /quotation mark/,
  },
  {
    name: 'bytes called .csv',
    fileName: 'log.csv',
    make: () => Uint8Array.from({ length: 5000 }, (_, index) => (index * 37) % 256),
    code: 'unreadable-text',
    says: /not a text file/,
  },
]
