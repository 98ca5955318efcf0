import { strToU8, type Zippable, zipSync } from 'fflate'

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
const MAIN =
  'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const RELATIONS = 'xmlns="http://schemas.openxmlformats.org/package/2006/relationships"'

export interface RawBook {
  /** The whole of xl/worksheets/sheet1.xml, or what stands inside <worksheet>. */
  sheet?: string
  strings?: string
  styles?: string
  /** What stands inside <sheets>. */
  sheets?: string
  names?: string
  prolog?: string
  more?: Record<string, Uint8Array>
}

/** The parts of the smallest workbook, as other programs write them; any of them can be replaced by something hostile. */
export function rawParts({
  sheet = '<sheetData/>',
  strings = '',
  styles = '',
  sheets,
  names = '',
  prolog = '',
  more = {},
}: RawBook): Record<string, Uint8Array> {
  const relation = (id: string, type: string, target: string) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`
  return {
    '[Content_Types].xml': strToU8(
      `${HEAD}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
    ),
    '_rels/.rels': strToU8(
      `${HEAD}<Relationships ${RELATIONS}>${relation('rId1', 'officeDocument', 'xl/workbook.xml')}</Relationships>`,
    ),
    'xl/workbook.xml': strToU8(
      `${HEAD}<workbook ${MAIN}><sheets>${sheets ?? '<sheet name="Log" sheetId="1" r:id="rId1"/>'}</sheets>${names}</workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `${HEAD}<Relationships ${RELATIONS}>${relation('rId1', 'worksheet', 'worksheets/sheet1.xml')}${relation('rId2', 'sharedStrings', 'sharedStrings.xml')}${relation('rId3', 'styles', 'styles.xml')}</Relationships>`,
    ),
    'xl/worksheets/sheet1.xml': strToU8(`${HEAD}${prolog}<worksheet ${MAIN}>${sheet}</worksheet>`),
    'xl/sharedStrings.xml': strToU8(`${HEAD}<sst ${MAIN}>${strings}</sst>`),
    'xl/styles.xml': strToU8(`${HEAD}<styleSheet ${MAIN}>${styles}</styleSheet>`),
    ...more,
  }
}

export function rawBook(given: RawBook, level: 0 | 1 | 6 | 9 = 6): Uint8Array {
  return zipSync(rawParts(given) as Zippable, { level, mtime: new Date('2026-01-01T00:00:00Z') })
}

/** Little-endian patches in the central directory entry of a part; offsets are those of the zip format. */
export function patchEntry(
  zip: Uint8Array,
  part: string,
  change: (view: DataView, at: number) => void,
): Uint8Array {
  const copy = zip.slice()
  const view = new DataView(copy.buffer)
  const name = strToU8(part)
  for (let at = 0; at + 46 < copy.length; at++) {
    if (view.getUint32(at, true) !== 0x02014b50) continue
    const length = view.getUint16(at + 28, true)
    if (length !== name.length || !name.every((byte, index) => copy[at + 46 + index] === byte)) continue
    change(view, at)
    return copy
  }
  throw new Error(`no part ${part}`)
}
