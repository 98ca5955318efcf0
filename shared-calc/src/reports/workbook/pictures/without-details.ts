/** Segments of a JPEG that say how to draw it; all others (Exif, XMP, IPTC, comments, previews) go. Source: ITU-T T.81, annex B. */
const DRAWN = { jfif: 0xe0, colourProfile: 0xe2, colourTransform: 0xee } as const
const PROFILE = 'ICC_PROFILE\0'

/** Chunks of a PNG that hold texts, times or Exif. Source: PNG specification (third edition), 11.3. */
const TOLD = new Set(['tEXt', 'zTXt', 'iTXt', 'eXIf', 'tIME'])

/**
 * The same picture without place, time, camera, texts and previews; not one pixel is changed.
 * @throws RangeError when the bytes are no whole JPEG or PNG
 */
export const withoutDetails = (bytes: Uint8Array, type: 'jpeg' | 'png'): Uint8Array =>
  type === 'jpeg' ? jpegWithout(bytes) : pngWithout(bytes)

function jpegWithout(bytes: Uint8Array): Uint8Array {
  const kept: Uint8Array[] = [bytes.subarray(0, 2)]
  let at = 2
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) throw new RangeError('it is a damaged JPEG')
    const marker = bytes[at + 1] ?? 0
    if (marker === 0xff) {
      at += 1
      continue
    }
    const end = at + 2 + ((bytes[at + 2] ?? 0) << 8) + (bytes[at + 3] ?? 0)
    if (end > bytes.length) break
    const segment = bytes.subarray(at, end)
    if (isDrawn(marker, segment)) kept.push(segment)
    at = end
    // After the head of a scan come its data, in which FF 00 and the restart markers FF D0 to FF D7 are not segments.
    if (marker === 0xda) {
      const scan = scanEnd(bytes, at)
      kept.push(bytes.subarray(at, scan))
      at = scan
    }
    // What follows the end of the picture is another file: a preview or a film, with details of its own.
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return joined([...kept, bytes.subarray(at, at + 2)])
  }
  throw new RangeError('it is a JPEG that ends too early')
}

function isDrawn(marker: number, segment: Uint8Array): boolean {
  if (marker === DRAWN.jfif || marker === DRAWN.colourTransform) return true
  if (marker === DRAWN.colourProfile) return ascii(segment, 4, PROFILE.length) === PROFILE
  return !(marker >= 0xe0 && marker <= 0xef) && marker !== 0xfe
}

function scanEnd(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    const next = bytes[at + 1] ?? 0
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at
  }
  return bytes.length
}

function pngWithout(bytes: Uint8Array): Uint8Array {
  const kept: Uint8Array[] = [bytes.subarray(0, 8)]
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = 8; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at)
    if (end > bytes.length) break
    const name = ascii(bytes, at + 4, 4)
    if (!TOLD.has(name)) kept.push(bytes.subarray(at, end))
    if (name === 'IEND') return joined(kept)
    at = end
  }
  throw new RangeError('it is a PNG that ends too early')
}

const ascii = (bytes: Uint8Array, from: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(from, from + length))

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const piece of pieces) {
    all.set(piece, at)
    at += piece.length
  }
  return all
}
