import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { guardSizes } from '../../container/guard.js'
import { refuseForeignDocument } from '../../container/sniff.js'
import { unpackText } from '../../container/unpack.js'
import { type XmlEvents, xmlReader } from '../../container/xml.js'
import { listEntries, type ZipEntry } from '../../container/zip.js'
import { refuse } from '../../problem.js'
import type { Grid } from '../grid.js'
import { type Content, contentEvents } from './content-part.js'
import { Styles, styleEvents } from './styles.js'

/**
 * Opens an OpenDocument spreadsheet (.ods): guard, directory, styles, then all tables, which are in one part. Macros,
 * pictures, charts and links are never unpacked.
 * @throws LogError when the file is hostile, damaged, protected by a password or no spreadsheet
 */
export function openSpreadsheet(bytes: Uint8Array, fileName: string): Grid {
  const entries = listEntries(bytes)
  guardSizes(bytes.length, entries)
  refuseForeignDocument(new Set(entries.keys()), statedType(bytes, entries))
  refuseEncrypted(bytes, entries)
  const styles = new Styles()
  if (entries.has('styles.xml')) read(bytes, entries, 'styles.xml', styleEvents(styles))
  const content: Content = { sheets: [], names: [] }
  read(bytes, entries, 'content.xml', contentEvents(content, styles))
  if (content.sheets.length === 0) refuse('damaged-file', 'the spreadsheet has no sheet')
  const sheets = new Map(content.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]))
  return {
    kind: 'workbook',
    fileName,
    sheetNames: content.sheets.map(({ name }) => name),
    sheet: (name) => sheets.get(name.toLowerCase()),
    names: content.names,
    date1904: false,
    findings: [...entries.keys()].some((name) => /^(Basic|Scripts)\/.+\/.+/.test(name))
      ? [remarkFinding(fileText('log-macros'))]
      : [],
  }
}

function read(
  bytes: Uint8Array,
  entries: ReadonlyMap<string, ZipEntry>,
  name: string,
  events: XmlEvents,
): void {
  const entry = entries.get(name)
  if (!entry) refuse('damaged-file', `the part ${name} is missing: the spreadsheet is incomplete`)
  const reader = xmlReader(name, events)
  unpackText(bytes, entry, (text) => reader.write(text))
  reader.end()
}

const LONGEST_TYPE = 200

/** What the file says it is; the part is optional, and a long one is none. */
function statedType(bytes: Uint8Array, entries: ReadonlyMap<string, ZipEntry>): string | undefined {
  const entry = entries.get('mimetype')
  let type = ''
  if (entry && entry.size <= LONGEST_TYPE)
    unpackText(bytes, entry, (text) => {
      type += text
    })
  return entry && type
}

/** Protected parts are listed as such in the manifest; their bytes would only look damaged. */
function refuseEncrypted(bytes: Uint8Array, entries: ReadonlyMap<string, ZipEntry>): void {
  if (!entries.has('META-INF/manifest.xml')) return
  read(bytes, entries, 'META-INF/manifest.xml', {
    open(name) {
      if (name === 'encryption-data')
        refuse(
          'encrypted',
          'the spreadsheet is protected by a password: open it and save a copy without the password',
        )
    },
    text() {},
    close() {},
  })
}
