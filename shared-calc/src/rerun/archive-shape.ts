import { decoderFor, listEntries, type ZipEntry } from '../log/container/zip.js'
import type { Difference } from './report.js'

const LOCAL_HEADER = 30
const END_RECORD = 22
/** A part's sizes may stand behind it, with or without a mark, in 32 or 64 bits (APPNOTE 6.3.10, 4.3.9). */
const DESCRIPTORS = [12, 16, 20, 24]

/**
 * What of an archive no list of parts accounts for: programs that read it another way would find other parts in it. A workbook as any
 * program saves it is its parts one after the other, their list and its end.
 */
export function archiveDifferences(bytes: Uint8Array): Difference[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const entries = [...listEntries(bytes).values()].sort((a, b) => a.offset - b.offset)
  const end = lastEnd(view)
  const list = view.getUint32(end + 16, true)
  const found: Difference[] = []
  const add = (label: string, recorded: string | number) =>
    found.push({ kind: 'part', label, recorded, expected: null, rounding: false })
  if (bytes.length > end + END_RECORD)
    add('stray bytes after the end of the file', bytes.length - end - END_RECORD)
  let at = 0
  for (const entry of entries) {
    if (entry.offset !== at) add(`stray bytes before part ${entry.name}`, entry.offset - at)
    const name = localName(bytes, view, entry)
    if (name !== entry.name) add(`part ${entry.name} has two different names`, name)
    at = endOf(view, entry, entries.find(({ offset }) => offset > entry.offset)?.offset ?? list)
  }
  if (at !== list) add('stray bytes before the list of parts', list - at)
  return found
}

function lastEnd(view: DataView): number {
  for (let at = view.byteLength - END_RECORD; at >= 0; at -= 1)
    if (view.getUint32(at, true) === 0x06054b50) return at
  return 0
}

const localName = (bytes: Uint8Array, view: DataView, { offset }: ZipEntry): string =>
  decoderFor('utf-8')
    .decode(bytes.subarray(offset + LOCAL_HEADER, offset + LOCAL_HEADER + view.getUint16(offset + 26, true)))
    .replaceAll('\\', '/')

/** Where a part ends; with its sizes behind it, where its flag says that they are there and the next begins just behind them. */
function endOf(view: DataView, { offset, packedSize }: ZipEntry, next: number): number {
  const end =
    offset + LOCAL_HEADER + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true) + packedSize
  const behind = (view.getUint16(offset + 6, true) & 8) !== 0
  return behind && DESCRIPTORS.includes(next - end) ? next : end
}
