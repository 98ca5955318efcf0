import type { Pixels } from './png.js'

type Colour = readonly [red: number, green: number, blue: number]
type Point = readonly [x: number, y: number]

const GROUND: Colour = [11, 93, 102]
const LINE: Colour = [255, 255, 255]
const AIR: Colour = [142, 214, 219]

/** Samples along each side of a pixel. */
const SAMPLES = 6

/** Three threads of air that pass a gap between two walls; coordinates from 0 to 1, y down. */
const WALLS: readonly (readonly [Point, Point])[] = [
  [
    [0.5, 0.15],
    [0.5, 0.25],
  ],
  [
    [0.5, 0.75],
    [0.5, 0.85],
  ],
]
const THREADS = [-0.25, 0, 0.25]

/** The add-in's sign at a size in px, on a rounded square or (`outline`) in white without a ground. */
export function drawIcon(size: number, outline = false): Pixels {
  const pixels = new Uint8Array(size * size * 4)
  // At ribbon sizes two thin threads would blur into one: only the middle one is drawn there.
  const threads = size < 24 ? [0] : THREADS
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) pixels.set(pixel(x, y, size, threads, outline), (y * size + x) * 4)
  return pixels
}

function pixel(x: number, y: number, size: number, threads: readonly number[], outline: boolean): number[] {
  const sum = [0, 0, 0, 0]
  for (let i = 0; i < SAMPLES; i++)
    for (let j = 0; j < SAMPLES; j++) {
      const at: Point = [(x + (i + 0.5) / SAMPLES) / size, (y + (j + 0.5) / SAMPLES) / size]
      const colour = colourAt(at, size, threads, outline)
      if (!colour) continue
      for (const part of [0, 1, 2] as const) sum[part] = (sum[part] ?? 0) + colour[part]
      sum[3] = (sum[3] ?? 0) + 1
    }
  const [red = 0, green = 0, blue = 0, hits = 0] = sum
  if (hits === 0) return [0, 0, 0, 0]
  return [red / hits, green / hits, blue / hits, (255 * hits) / SAMPLES ** 2].map(Math.round)
}

function colourAt(at: Point, size: number, threads: readonly number[], outline: boolean): Colour | undefined {
  const thick = 0.08
  if (WALLS.some(([from, to]) => toSegment(at, from, to) < thick)) return LINE
  const thread = threads.some((offset) => onThread(at, offset, size < 24 ? 0.065 : 0.036))
  if (thread) return outline ? LINE : AIR
  if (outline) return undefined
  return inRoundedSquare(at, 0.2) ? GROUND : undefined
}

/** Wide apart left and right, drawn together in the gap. */
function onThread([x, y]: Point, offset: number, half: number): boolean {
  if (x < 0.13 || x > 0.87) return false
  const spread = 0.42 + 0.58 * Math.min(1, Math.abs(x - 0.5) / 0.34) ** 1.6
  return Math.abs(y - (0.5 + offset * spread)) < half
}

function toSegment([x, y]: Point, [x1, y1]: Point, [x2, y2]: Point): number {
  const length = (x2 - x1) ** 2 + (y2 - y1) ** 2
  const along = Math.min(1, Math.max(0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / length))
  return Math.hypot(x - x1 - along * (x2 - x1), y - y1 - along * (y2 - y1))
}

function inRoundedSquare([x, y]: Point, radius: number): boolean {
  const [dx, dy] = [
    Math.max(Math.abs(x - 0.5) - 0.5 + radius, 0),
    Math.max(Math.abs(y - 0.5) - 0.5 + radius, 0),
  ]
  return Math.hypot(dx, dy) <= radius
}
