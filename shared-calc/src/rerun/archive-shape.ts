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
    const said = saidTwice(view, entry)
    if (said) add(`part ${entry.name} is described in two ways`, said)
    at = endOf(view, entry, entries.find(({ offset }) => offset > entry.offset)?.offset ?? list)
  }
  if (at !== list) add('stray bytes before the list of parts', list - at)
  for (const odd of oddList(view, list, end)) add(odd, 'list of parts')
  return found
}

/** What a part's own header says otherwise than the list of parts: programs that read a file from its beginning follow the former. */
function saidTwice(view: DataView, { offset, method, crc, packedSize, size }: ZipEntry): string | undefined {
  const flags = view.getUint16(offset + 6, true)
  if (flags & 1) return 'password-protected'
  if (view.getUint16(offset + 8, true) !== method) return 'another way of packing'
  // With bit 3 its sizes stand behind it, and are left 0 here (APPNOTE 6.3.10, 4.4.4).
  const behind = (flags & 8) !== 0
  const same = (at: number, value: number) => {
    const own = view.getUint32(offset + at, true)
    return own === value || (behind && own === 0)
  }
  return same(14, crc) && same(18, packedSize) && same(22, size) ? undefined : 'another size or checksum'
}

/** Extra fields that give a part another name or other sizes (APPNOTE 6.3.10, 4.6.9 and 4.5.3). */
const RENAMING = 0x7075
const ZIP64_SIZES = 0x0001

/** What is odd in the list of parts itself: more entries than it counts, remarks on parts, second names. */
function oddList(view: DataView, list: number, end: number): string[] {
  const odd: string[] = []
  let at = list
  let count = 0
  while (at + 46 <= end && view.getUint32(at, true) === 0x02014b50) {
    const name = view.getUint16(at + 28, true)
    const extra = view.getUint16(at + 30, true)
    const remark = view.getUint16(at + 32, true)
    if (remark > 0) odd.push('a remark on a part')
    for (let field = at + 46 + name; field + 4 <= at + 46 + name + extra; ) {
      const id = view.getUint16(field, true)
      if (id === RENAMING || id === ZIP64_SIZES) odd.push('a second name or size of a part')
      field += 4 + view.getUint16(field + 2, true)
    }
    at += 46 + name + extra + remark
    count += 1
  }
  if (at !== end) odd.push('stray bytes after the list of parts')
  if (count !== view.getUint16(end + 10, true)) odd.push('parts that are not counted')
  return [...new Set(odd)]
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
