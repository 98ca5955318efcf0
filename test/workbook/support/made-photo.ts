import jpeg from 'jpeg-js'

/** Where the invented photos say they were taken: in the middle of the sea. */
export const TOLD_PLACE = 'Nowhere Bay 0N 0E'
export const TOLD_TIME = '2026:10:14 09:30:00'

type Colour = readonly [number, number, number]
export const RED: Colour = [220, 20, 20]
export const BLUE: Colour = [20, 20, 220]

/** A JPEG whose upper left quarter is red and the rest blue, as stored; nothing is said about it yet. */
export function plainPhoto(width = 64, height = 32): Uint8Array {
  const data = new Uint8Array(width * height * 4)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      data.set([...(x < width / 2 && y < height / 2 ? RED : BLUE), 255], (y * width + x) * 4)
  return new Uint8Array(jpeg.encode({ width, height, data }, 90).data)
}

/**
 * The same with an Exif segment put in by hand after CIPA DC-008: orientation (0112), time (0132) and a description (010E) of the
 * place; then XMP, a comment, and a second picture behind the end, as phones add them.
 */
export function phonePhoto(orientation: number, width?: number, height?: number): Uint8Array {
  const text = (value: string) => [...new TextEncoder().encode(value), 0]
  const place = text(TOLD_PLACE)
  const time = text(TOLD_TIME)
  const texts = 8 + 2 + 3 * 12 + 4
  const entry = (tag: number, type: number, count: number, value: number[]) => [
    ...[tag >> 8, tag & 255, 0, type],
    ...long(count),
    ...value,
  ]
  const tiff = [
    ...[0x4d, 0x4d, 0, 42, ...long(8), 0, 3],
    ...entry(0x010e, 2, place.length, long(texts)),
    ...entry(0x0112, 3, 1, [0, orientation, 0, 0]),
    ...entry(0x0132, 2, time.length, long(texts + place.length)),
    ...long(0),
    ...place,
    ...time,
  ]
  const plain = plainPhoto(width, height)
  return new Uint8Array([
    ...plain.subarray(0, 2),
    ...segment(0xe1, [...text('Exif'), 0, ...tiff]),
    ...segment(0xe1, text(`http://ns.adobe.com/xap/1.0/\0<x>${TOLD_PLACE}</x>`)),
    ...segment(0xfe, text(`taken at ${TOLD_PLACE}`)),
    ...plain.subarray(2),
    ...text(`film behind the picture, ${TOLD_PLACE}`),
  ])
}

const long = (value: number): number[] => [value >>> 24, (value >> 16) & 255, (value >> 8) & 255, value & 255]

const segment = (marker: number, content: readonly number[]): number[] => [
  0xff,
  marker,
  (content.length + 2) >> 8,
  (content.length + 2) & 255,
  ...content,
]

/** One red point as a PNG, packed by hand (stored block, no compression), with a text that names a place. */
export function placedPng(): Uint8Array {
  const chunk = (name: string, content: number[]) => {
    const body = [...new TextEncoder().encode(name), ...content]
    return [...long(content.length), ...body, ...long(crc(body))]
  }
  const raw = [0, 220, 20, 20]
  const [a, b] = raw.reduce(([s, t], byte) => [(s + byte) % 65521, (t + s + byte) % 65521], [1, 0])
  const deflated = [
    0x78,
    1,
    1,
    raw.length,
    0,
    255 - raw.length,
    255,
    ...raw,
    ...long(((b ?? 0) << 16) | (a ?? 0)),
  ]
  return new Uint8Array([
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...chunk('IHDR', [...long(1), ...long(1), 8, 2, 0, 0, 0]),
    ...chunk('tEXt', [...new TextEncoder().encode(`Comment\0${TOLD_PLACE}`)]),
    ...chunk('IDAT', deflated),
    ...chunk('IEND', []),
  ])
}

/** CRC-32 as ISO 3309 has it, bit by bit. */
function crc(bytes: readonly number[]): number {
  let all = 0xffffffff
  for (const byte of bytes) {
    all ^= byte
    for (let bit = 0; bit < 8; bit += 1) all = all & 1 ? (all >>> 1) ^ 0xedb88320 : all >>> 1
  }
  return ~all
}
