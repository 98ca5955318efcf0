import { refuse } from '../problem.js'
import { decoderFor } from './zip.js'

export type ContentKind = 'workbook' | 'spreadsheet' | 'text'

const SAVE_AS = 'open it in a spreadsheet program and save it as .xlsx'
/** For what no spreadsheet program opens. */
const TYPE_IN = 'copy its values into a spreadsheet and save it as .xlsx'

/**
 * What a file is by its first bytes; its extension must agree. Old, binary and encrypted files are refused with what to do.
 * @returns 'workbook' for .xlsx and .xlsm, 'spreadsheet' for .ods, 'text' for .csv, .txt and .tsv
 * @throws LogError `unsupported-format`, `encrypted`, `wrong-extension`
 */
export function sniff(bytes: Uint8Array, fileName: string): ContentKind {
  const extension = /\.([^./\\]+)$/.exec(fileName)?.[1]?.toLowerCase() ?? ''
  if (bytes.length === 0) refuse('damaged-file', 'the file is empty')
  if (startsWith(bytes, [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1])) refuseCompoundFile(bytes)
  if (startsWith(bytes, [0x09, 0x08]) || startsWith(bytes, [0x09, 0x04]) || startsWith(bytes, [0x09, 0x02]))
    refuse('unsupported-format', `the file is a spreadsheet in a format from before 1997: ${SAVE_AS}`)
  const zip = startsWith(bytes, [0x50, 0x4b])
  if (extension === 'xls' || extension === 'xlsb' || extension === 'numbers')
    refuse('unsupported-format', `.${extension} files are not read: ${SAVE_AS}`)
  if (zip) {
    if (extension === 'ods') return 'spreadsheet'
    if (extension !== 'xlsx' && extension !== 'xlsm')
      wrongExtension(extension, 'a workbook or zip archive', '.xlsx')
    return 'workbook'
  }
  refuseOther(bytes)
  if (extension === 'xlsx' || extension === 'xlsm' || extension === 'ods') {
    if (bytes.subarray(0, 512).some((byte) => byte < 9))
      refuse('damaged-file', `the file is damaged or is not a workbook: ${SAVE_AS}`)
    wrongExtension(extension, 'text, not a workbook', '.csv')
  }
  if (!['csv', 'txt', 'tsv'].includes(extension))
    refuse(
      'unsupported-format',
      `${extension === '' ? 'a file whose name has no ending is not read' : `.${extension} files are not read`}: a log is an .xlsx, .xlsm, .ods or .csv file`,
    )
  return 'text'
}

/** A compound file is either an old .xls or a password-protected .xlsx; its directory says which, in UTF-16. */
function refuseCompoundFile(bytes: Uint8Array): never {
  if (holdsUtf16(bytes, 'EncryptedPackage'))
    refuse(
      'encrypted',
      'the workbook is protected by a password: open it and save a copy without the password',
    )
  refuse('unsupported-format', `the file is an old .xls workbook (or another old office file): ${SAVE_AS}`)
}

function refuseOther(bytes: Uint8Array): void {
  const head = decoderFor('latin1').decode(bytes.subarray(0, 512)).trimStart().toLowerCase()
  const binary: [string, string, string][] = [
    ['%pdf', 'a PDF', TYPE_IN],
    ['\u0089png', 'a picture', TYPE_IN],
    // The first bytes of a JPEG are FF D8 FF, here in lower case.
    ['\u00ff\u00f8\u00ff', 'a picture', TYPE_IN],
    ['<html', 'a web page', SAVE_AS],
    ['<!doctype html', 'a web page', SAVE_AS],
    ['<?xml', 'an XML file', SAVE_AS],
    ['{\\rtf', 'a text document', TYPE_IN],
  ]
  for (const [mark, what, advice] of binary)
    if (head.startsWith(mark)) refuse('unsupported-format', `the file is ${what}, not a log: ${advice}`)
}

/** What a zip is, by the names of its parts. Throws LogError when it is not a workbook this reader knows. */
export function refuseForeignZip(names: ReadonlySet<string>): void {
  const has = (pattern: RegExp) => [...names].some((name) => pattern.test(name))
  if (names.has('xl/workbook.bin'))
    refuse('unsupported-format', `the file is a binary .xlsb workbook: ${SAVE_AS}`)
  if (names.has('content.xml') && names.has('mimetype'))
    refuse(
      'wrong-extension',
      'the file is an OpenDocument file with another extension: if it is a log, rename it to .ods',
    )
  if (has(/^word\//)) refuse('wrong-extension', `the file is a text document, not a workbook: ${TYPE_IN}`)
  if (has(/^ppt\//)) refuse('wrong-extension', `the file is a presentation, not a workbook: ${TYPE_IN}`)
  if (!names.has('[Content_Types].xml'))
    refuse(
      'wrong-extension',
      'the file is a zip archive, not a workbook: unpack it and read the workbooks inside',
    )
}

/** The same for an .ods, whose part `mimetype` says what it is. Throws LogError. */
export function refuseForeignDocument(names: ReadonlySet<string>, type: string | undefined): void {
  if (names.has('xl/workbook.xml')) wrongExtension('ods', 'an .xlsx workbook', '.xlsx')
  if (
    type !== undefined &&
    !/^application\/vnd\.oasis\.opendocument\.spreadsheet(-template)?$/.test(type.trim())
  )
    refuse('wrong-extension', 'the file is an OpenDocument file other than a spreadsheet')
  if (!names.has('content.xml'))
    refuse(
      'wrong-extension',
      'the file is a zip archive, not a spreadsheet: unpack it and read the spreadsheets inside',
    )
}

function wrongExtension(extension: string, what: string, right: string): never {
  refuse(
    'wrong-extension',
    `the file is named .${extension} but is ${what}: if it is a log, rename it to ${right}`,
  )
}

function startsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, index) => bytes[index] === byte)
}

function holdsUtf16(bytes: Uint8Array, text: string): boolean {
  const codes = [...text].map((letter) => letter.charCodeAt(0))
  for (let at = bytes.indexOf(codes[0] as number); at >= 0; at = bytes.indexOf(codes[0] as number, at + 1))
    if (codes.every((code, index) => bytes[at + 2 * index] === code && bytes[at + 2 * index + 1] === 0))
      return true
  return false
}
