import { Inflate, inflateSync } from 'fflate'
import { LIMITS } from '../limits.js'
import { LogError, refuse } from '../problem.js'
import { crc32 } from './crc32.js'
import { decoderFor, packedBytes, type ZipEntry } from './zip.js'

/** Above this a part is unpacked in pieces, so that the whole is never in memory at once. */
const PIECEWISE_FROM = 512 * 1024
/** Packed bytes per piece: at deflate's ceiling of 1032 it becomes 8 MB. */
const PIECE = 8 * 1024

/**
 * Unpacks one part and hands it on as text, piece by piece. Sizes and the checksum are checked against the directory.
 * @throws LogError `damaged-file`, `compression-bomb`, `unreadable-text`
 */
export function unpackText(file: Uint8Array, entry: ZipEntry, onText: (text: string) => void): void {
  const decoder = textDecoder(entry)
  let size = 0
  let crc = 0
  unpack(file, entry, (piece) => {
    size += piece.length
    if (size > entry.size || size > LIMITS.partBytes)
      refuse(
        'compression-bomb',
        `the part ${entry.name} unpacks to more than the ${entry.size} bytes it declares`,
      )
    crc = crc32(piece, crc)
    onText(decoder.decode(piece, size === entry.size))
  })
  if (size !== entry.size || crc !== entry.crc)
    refuse(
      'damaged-file',
      `the part ${entry.name} is damaged (its checksum does not match): copy the file again`,
    )
}

function unpack(file: Uint8Array, entry: ZipEntry, onPiece: (piece: Uint8Array) => void): void {
  const packed = packedBytes(file, entry)
  if (entry.method === 0) {
    onPiece(packed)
    return
  }
  if (entry.method !== 8)
    refuse('damaged-file', `the part ${entry.name} is compressed in a way that no workbook uses`)
  try {
    if (entry.size < PIECEWISE_FROM) onPiece(inflateSync(packed, { out: new Uint8Array(entry.size + 1) }))
    else inPieces(packed, onPiece)
  } catch (error) {
    if (error instanceof LogError) throw error
    refuse('damaged-file', `the part ${entry.name} cannot be unpacked: copy the file again`)
  }
}

function inPieces(packed: Uint8Array, onPiece: (piece: Uint8Array) => void): void {
  const inflate = new Inflate(onPiece)
  for (let at = 0; at < packed.length; at += PIECE)
    inflate.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length)
}

const UTF_8 = decoderFor('utf-8', { fatal: true })

/** Decodes a part piece by piece; whole parts at once, which runtimes do several times faster. */
function textDecoder({ name }: ZipEntry) {
  let decoder: ReturnType<typeof decoderFor> | undefined
  return {
    decode(piece: Uint8Array, last: boolean): string {
      const encoding = decoder ? '' : encodingOf(piece)
      try {
        // A decoder that is given the whole keeps nothing: one serves all parts.
        if (last && encoding === 'utf-8') return UTF_8.decode(piece)
        decoder ??= decoderFor(encoding, { fatal: true })
        return decoder.decode(piece, { stream: !last })
      } catch {
        return refuse('unreadable-text', `the part ${name} is not text in the encoding it states`)
      }
    },
  }
}

/** XML parts are UTF-8 or UTF-16 (ECMA-376 part 2); a mark at the front tells which. */
function encodingOf(start: Uint8Array): string {
  if (start[0] === 0xff && start[1] === 0xfe) return 'utf-16le'
  if (start[0] === 0xfe && start[1] === 0xff) return 'utf-16be'
  return 'utf-8'
}

/** The bytes of one part, checked as {@link unpackText} does. Throws LogError. */
export function unpackBytes(file: Uint8Array, entry: ZipEntry): Uint8Array {
  const pieces: Uint8Array[] = []
  let size = 0
  unpack(file, entry, (piece) => {
    size += piece.length
    if (size > entry.size)
      refuse(
        'compression-bomb',
        `the part ${entry.name} unpacks to more than the ${entry.size} bytes it declares`,
      )
    pieces.push(piece)
  })
  const [first = new Uint8Array()] = pieces
  const bytes = pieces.length > 1 ? joined(pieces, size) : first
  if (size !== entry.size || crc32(bytes) !== entry.crc)
    refuse(
      'damaged-file',
      `the part ${entry.name} is damaged (its checksum does not match): copy the file again`,
    )
  return bytes
}

function joined(pieces: readonly Uint8Array[], size: number): Uint8Array {
  const whole = new Uint8Array(size)
  let at = 0
  for (const piece of pieces) {
    whole.set(piece, at)
    at += piece.length
  }
  return whole
}
