import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'

interface Decoder {
  decode(bytes?: Uint8Array, options?: { stream?: boolean }): string
}

/** Part of every runtime this code is meant for (Node, browsers, workers), but of no TypeScript library set without the DOM. */
declare const TextDecoder: new (encoding?: string, options?: { fatal?: boolean }) => Decoder

/** A decoder for one of the encodings of the WHATWG Encoding standard. `fatal`: bytes that fit no character throw. */
export function decoderFor(encoding: string, { fatal = false } = {}): Decoder {
  return new TextDecoder(encoding, { fatal })
}

/** One part of a zip, as its central directory declares it. */
export interface ZipEntry {
  name: string
  method: number
  crc: number
  packedSize: number
  size: number
  /** Where its local header begins. */
  offset: number
}

const END_RECORD = 0x06054b50
const CENTRAL_HEADER = 0x02014b50
const ZIP64 = 0xffffffff

/** Parts of a zip by name, read from the central directory alone: nothing is unpacked. Throws LogError. */
export function listEntries(bytes: Uint8Array): Map<string, ZipEntry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const end = findEnd(view)
  const count = view.getUint16(end + 10, true)
  let at = view.getUint32(end + 16, true)
  if (count === 0xffff || at === ZIP64)
    refuse('damaged-file', 'the file uses zip64, which no workbook of this size needs')
  if (count > LIMITS.entries)
    refuse('too-many-parts', `the file holds ${count} parts; at most ${LIMITS.entries} are read`)
  const names = decoderFor('utf-8')
  const entries = new Map<string, ZipEntry>()
  for (let index = 0; index < count; index++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== CENTRAL_HEADER) damaged()
    const nameLength = view.getUint16(at + 28, true)
    const entry = readEntry(view, at, names.decode(bytes.subarray(at + 46, at + 46 + nameLength)))
    if (entries.has(entry.name)) refuse('damaged-file', `the file holds the part ${entry.name} twice`)
    entries.set(entry.name, entry)
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  }
  return entries
}

function readEntry(view: DataView, at: number, name: string): ZipEntry {
  if (view.getUint16(at + 8, true) & 1)
    refuse('encrypted', `the part ${name} of the file is password-protected`)
  return {
    name: name.replaceAll('\\', '/'),
    method: view.getUint16(at + 10, true),
    crc: view.getUint32(at + 16, true),
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    offset: view.getUint32(at + 42, true),
  }
}

/** The end record sits in the last 65,557 bytes, before a comment of up to 65,535. */
function findEnd(view: DataView): number {
  const first = Math.max(0, view.byteLength - 65_557)
  for (let at = view.byteLength - 22; at >= first; at--)
    if (view.getUint32(at, true) === END_RECORD) return at
  return damaged()
}

/** The packed bytes of a part, without unpacking them. */
export function packedBytes(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (entry.offset + 30 > bytes.length || view.getUint32(entry.offset, true) !== 0x04034b50) damaged()
  const start =
    entry.offset + 30 + view.getUint16(entry.offset + 26, true) + view.getUint16(entry.offset + 28, true)
  if (start + entry.packedSize > bytes.length) damaged()
  return bytes.subarray(start, start + entry.packedSize)
}

function damaged(): never {
  refuse('damaged-file', 'the file is incomplete or damaged: copy it again from where it was saved')
}
