import { crc32, deflateSync } from 'node:zlib'

/** Red, green, blue and opacity, 0…255, row by row from the top left: length size · size · 4. */
export type Pixels = Uint8Array

/** A square PNG with opacity. Source: PNG specification (third edition), 8-bit RGBA without interlace. */
export function encodePng(pixels: Pixels, size: number): Uint8Array {
  const rows = new Uint8Array(size * (size * 4 + 1))
  for (let row = 0; row < size; row++)
    rows.set(pixels.subarray(row * size * 4, (row + 1) * size * 4), row * (size * 4 + 1) + 1)
  const header = new DataView(new ArrayBuffer(13))
  header.setUint32(0, size)
  header.setUint32(4, size)
  header.setUint8(8, 8)
  header.setUint8(9, 6)
  return Buffer.concat([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', new Uint8Array(header.buffer)),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', new Uint8Array()),
  ])
}

function chunk(type: string, data: Uint8Array): Uint8Array {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const whole = Buffer.alloc(body.length + 8)
  whole.writeUInt32BE(data.length, 0)
  body.copy(whole, 4)
  whole.writeUInt32BE(crc32(body), body.length + 4)
  return whole
}
