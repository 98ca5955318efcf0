import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { ICON_SIZES, iconFile } from '../../manifests/src/definition.js'
import { drawIcon } from '../../manifests/src/icons/draw.js'
import { encodePng } from '../../manifests/src/icons/png.js'

const stored = (file: string): Buffer =>
  readFileSync(fileURLToPath(new URL(`../../addin/public/${file}`, import.meta.url)))

/** Pixels of a PNG as our encoder writes it: one IDAT, filter 0. Compressed bytes may differ between zlib versions. */
function pixelsOf(png: Buffer): { size: number; pixels: Buffer } {
  const size = png.readUInt32BE(16)
  const start = png.indexOf('IDAT')
  const rows = inflateSync(png.subarray(start + 4, start + 4 + png.readUInt32BE(start - 4)))
  const lines = Array.from({ length: size }, (_, row) =>
    rows.subarray(row * (size * 4 + 1) + 1, (row + 1) * (size * 4 + 1)),
  )
  return { size, pixels: Buffer.concat(lines) }
}

describe('icons', () => {
  it.each([...ICON_SIZES])('at %i px are what the drawing gives', (size) => {
    const file = pixelsOf(stored(iconFile(size)))
    expect(file.size).toBe(size)
    expect(file.pixels.equals(Buffer.from(drawIcon(size)))).toBe(true)
  })

  it('the outline is white on nothing, as the unified manifest asks', () => {
    const { size, pixels } = pixelsOf(stored('icons/draughtbook-outline-32.png'))
    expect(size).toBe(32)
    const opaque = Array.from({ length: size * size }, (_, at) => pixels.subarray(at * 4, at * 4 + 4)).filter(
      ([, , , opacity]) => opacity,
    )
    expect(opaque.length).toBeGreaterThan(100)
    for (const [red, green, blue] of opaque) expect([red, green, blue]).toEqual([255, 255, 255])
  })

  it('are PNG files with right check sums (CRC-32 of a known chunk: IEND is AE426082)', () => {
    const png = Buffer.from(encodePng(drawIcon(16), 16))
    expect(png.subarray(-8).toString('hex')).toBe('49454e44ae426082')
  })
})
