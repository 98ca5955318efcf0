import { encodingOf, findSeparator, splitFields, type TextEncoding } from '@draughtbook/shared-calc/log'
import { cellAddress, joinReference } from '../host/address.js'
import type { CellContent } from './change-cell.js'
import type { CellPatch, Patched } from './patch-workbook.js'

/**
 * Changes cells of a separated-values file. Separator, quotation marks, encoding, line ends and every other field stay as they are.
 * @param decimal sign that numbers of the file are written with
 */
export function patchText(bytes: Uint8Array, patches: readonly CellPatch[], decimal: '.' | ','): Patched {
  const encoding = encodingOf(bytes)
  let text = new TextDecoder(encoding, { ignoreBOM: true }).decode(bytes)
  const left: Patched['left'] = []
  for (const { sheet, row, column, content } of patches) {
    const written = fieldText(content, decimal)
    const strange = encoding === 'windows-1252' ? [...written].find((one) => !(one in latin())) : undefined
    if (strange === undefined) text = changeField(text, row - 1, column - 1, written)
    else
      left.push({
        cell: joinReference(sheet, cellAddress(row, column)),
        why: `the file is written in Windows-1252, which has no "${strange}"`,
      })
  }
  return { bytes: encoded(text, encoding), left }
}

const fieldText = (content: CellContent, decimal: '.' | ','): string =>
  typeof content === 'number' ? String(content).replace('.', decimal) : (content ?? '')

/** A mark of the encoding and a line that states the separator are before the first field. */
const BEFORE = /^\ufeff?(?:sep=[\t;|,](?=\r?\n))?/

interface Span {
  start: number
  end: number
}

/** The text with one field changed; rows and columns count from 0. */
function changeField(whole: string, row: number, column: number, content: string): string {
  const before = BEFORE.exec(whole)?.[0] ?? ''
  const text = whole.slice(before.length)
  const separator = findSeparator(whole.replace(/^\ufeff/, '')) ?? ''
  const spans: Span[] = []
  let rows = 0
  let last: Span = { start: text.length, end: text.length }
  splitFields(text, separator, (at, _place, start, end) => {
    rows = at + 1
    last = { start, end }
    if (at === row) spans.push({ start, end })
  })
  const own = spans[column]
  if (own)
    return before + text.slice(0, own.start) + inPlace(text, own, content, separator) + text.slice(own.end)
  const added = separator.repeat(column - Math.max(0, spans.length - 1)) + quoted(content, separator)
  const end = spans.at(-1)?.end
  if (end !== undefined) return before + text.slice(0, end) + added + text.slice(end)
  // Below the last row; a text that ends with a line break has an empty one there already.
  const lineEnd = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n'
  const further = row - (rows - 1)
  return `${before}${text.slice(0, last.end)}${lineEnd.repeat(further)}${separator.repeat(column)}${quoted(content, separator)}`
}

/** A field that stood in quotation marks keeps them; blanks round one without stay. */
function inPlace(text: string, { start, end }: Span, content: string, separator: string): string {
  const old = text.slice(start, end)
  if (old.startsWith('"')) return `"${content.replaceAll('"', '""')}"`
  const front = old.length - old.trimStart().length
  const back = Math.max(front, old.trimEnd().length)
  return old.slice(0, front) + quoted(content, separator) + old.slice(back)
}

const quoted = (content: string, separator: string): string =>
  (separator !== '' && content.includes(separator)) || /["\r\n]/.test(content)
    ? `"${content.replaceAll('"', '""')}"`
    : content

let letters: Record<string, number> | undefined

/** Every character of Windows-1252 with its byte. */
function latin(): Record<string, number> {
  if (letters) return letters
  const all = new TextDecoder('windows-1252').decode(Uint8Array.from({ length: 256 }, (_, byte) => byte))
  letters = Object.fromEntries([...all].map((letter, byte) => [letter, byte]))
  return letters
}

function encoded(text: string, encoding: TextEncoding): Uint8Array {
  if (encoding === 'utf-8') return new TextEncoder().encode(text)
  if (encoding === 'windows-1252') return Uint8Array.from(text, (letter) => latin()[letter] ?? 0x3f)
  const view = new DataView(new ArrayBuffer(text.length * 2))
  for (let at = 0; at < text.length; at += 1)
    view.setUint16(at * 2, text.charCodeAt(at), encoding === 'utf-16le')
  return new Uint8Array(view.buffer)
}
