import type { Page } from 'playwright-core'

/** Words a camera writes into its files; none of them may be in what is kept. */
export const TAKEN_AT = '2026:10:14 09:30:21'

/** A JPEG as a camera gives it: lying on its side (orientation 6), with the time and a GPS block in its Exif segment. */
export async function cameraPicture(page: Page, width: number, height: number): Promise<Buffer> {
  const address = await page.evaluate(
    ([w = 1, h = 1]) => {
      const canvas = document.createElement('canvas')
      canvas.width = w
      canvas.height = h
      const pen = canvas.getContext('2d')
      if (!pen) throw new Error('no canvas')
      pen.fillStyle = '#4a7'
      pen.fillRect(0, 0, w, h)
      pen.fillStyle = '#a31'
      pen.fillRect(w / 4, h / 4, w / 8, h / 2)
      return canvas.toDataURL('image/jpeg', 0.9)
    },
    [width, height],
  )
  const plain = Buffer.from(address.replace(/^data:image\/jpeg;base64,/, ''), 'base64')
  return Buffer.concat([plain.subarray(0, 2), exif(), plain.subarray(2)])
}

/** APP1 segment by the Exif 2.3 layout: IFD0 with orientation, date and time, and a pointer to a GPS block. */
function exif(): Buffer {
  const entry = (tag: number, type: number, count: number, value: number): Buffer => {
    const bytes = Buffer.alloc(12)
    bytes.writeUInt16LE(tag, 0)
    bytes.writeUInt16LE(type, 2)
    bytes.writeUInt32LE(count, 4)
    bytes.writeUInt32LE(value, 8)
    return bytes
  }
  const ifd = 8
  const text = ifd + 2 + 3 * 12 + 4
  const gps = text + 20
  const tiff = Buffer.concat([
    Buffer.from('II*\0'),
    Buffer.from([ifd, 0, 0, 0]),
    Buffer.from([3, 0]),
    entry(0x0112, 3, 1, 6),
    entry(0x0132, 2, 20, text),
    entry(0x8825, 4, 1, gps),
    Buffer.alloc(4),
    Buffer.from(`${TAKEN_AT}\0`),
    Buffer.from([1, 0]),
    entry(1, 2, 2, 'N'.charCodeAt(0)),
    Buffer.alloc(4),
  ])
  const body = Buffer.concat([Buffer.from('Exif\0\0'), tiff])
  const head = Buffer.from([0xff, 0xe1, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([head, body])
}

/** Width and height by the frame header of a JPEG (ISO/IEC 10918-1, B.2.2), and the names of its APP segments. */
export function jpegOf(bytes: Uint8Array): { width: number; height: number; segments: string[] } {
  const data = Buffer.from(bytes)
  const segments: string[] = []
  for (let at = 2; at < data.length; at += 2 + data.readUInt16BE(at + 2)) {
    const marker = data.readUInt16BE(at)
    if (marker >= 0xffe0 && marker <= 0xffef) segments.push(data.toString('latin1', at + 4, at + 8))
    if (marker === 0xffc0 || marker === 0xffc2)
      return { height: data.readUInt16BE(at + 5), width: data.readUInt16BE(at + 7), segments }
  }
  throw new Error('no frame header in this JPEG')
}
