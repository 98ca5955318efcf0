import { PICTURE_LIMITS } from './picture.js'

/** Quality of a photo that is packed again: a leak stays plain to see, at a fifth of the bytes of the best quality. */
const QUALITY = 82

interface Pixels {
  readonly width: number
  readonly height: number
  /** Red, green, blue and opacity of each pixel, row by row. */
  readonly data: Uint8Array
}

/**
 * A JPEG turned upright and scaled down to the limit. Programs do not agree on whether they obey the orientation that a camera
 * notes, so the pixels themselves are turned.
 * @param orientation - as Exif numbers it, 1 to 8 (CIPA DC-008, tag 0112)
 * @throws Error when the picture cannot be unpacked, or is too large for that
 */
export async function uprightJpeg(
  bytes: Uint8Array,
  orientation: number,
): Promise<{ bytes: Uint8Array; width_px: number; height_px: number }> {
  const { default: jpeg } = await import('jpeg-js')
  const full = jpeg.decode(bytes, {
    useTArray: true,
    maxResolutionInMP: PICTURE_LIMITS.megapixels,
    maxMemoryUsageInMB: 1024,
  })
  const { width, height, data } = turned(scaledDown(full, PICTURE_LIMITS.longSide_px), orientation)
  const packed = jpeg.encode({ width, height, data }, QUALITY)
  return { bytes: new Uint8Array(packed.data), width_px: width, height_px: height }
}

/** Every new pixel is the mean of the pixels it covers. */
function scaledDown(pixels: Pixels, longSide: number): Pixels {
  const factor = Math.max(pixels.width, pixels.height) / longSide
  if (factor <= 1) return pixels
  const width = Math.max(1, Math.round(pixels.width / factor))
  const height = Math.max(1, Math.round(pixels.height / factor))
  const data = new Uint8Array(width * height * 4)
  const edge = (i: number, size: number, of: number) => Math.floor((i * of) / size)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const [left, top] = [edge(x, width, pixels.width), edge(y, height, pixels.height)]
      const right = Math.max(left + 1, edge(x + 1, width, pixels.width))
      const bottom = Math.max(top + 1, edge(y + 1, height, pixels.height))
      const sums = [0, 0, 0, 0]
      for (let row = top; row < bottom; row += 1)
        for (let column = left; column < right; column += 1)
          for (let c = 0; c < 4; c += 1)
            sums[c] = (sums[c] ?? 0) + (pixels.data[(row * pixels.width + column) * 4 + c] ?? 0)
      const count = (right - left) * (bottom - top)
      for (let c = 0; c < 4; c += 1) data[(y * width + x) * 4 + c] = Math.round((sums[c] ?? 0) / count)
    }
  return { width, height, data }
}

/** Where the pixel at column x and row y of the upright picture is in the stored one, by orientation. */
const STORED_AT: Readonly<Record<number, (x: number, y: number, w: number, h: number) => [number, number]>> =
  {
    2: (x, y, w) => [w - 1 - x, y],
    3: (x, y, w, h) => [w - 1 - x, h - 1 - y],
    4: (x, y, _w, h) => [x, h - 1 - y],
    5: (x, y) => [y, x],
    6: (x, y, _w, h) => [y, h - 1 - x],
    7: (x, y, w, h) => [w - 1 - y, h - 1 - x],
    8: (x, y, w) => [w - 1 - y, x],
  }

function turned(pixels: Pixels, orientation: number): Pixels {
  const place = STORED_AT[orientation]
  if (!place) return pixels
  const [width, height] = orientation >= 5 ? [pixels.height, pixels.width] : [pixels.width, pixels.height]
  const data = new Uint8Array(pixels.data.length)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const [column, row] = place(x, y, pixels.width, pixels.height)
      const from = (row * pixels.width + column) * 4
      data.set(pixels.data.subarray(from, from + 4), (y * width + x) * 4)
    }
  return { width, height, data }
}
