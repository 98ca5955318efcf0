import type { Writable } from 'node:stream'
import { setImmediate as nextTurn } from 'node:timers/promises'

/** Parts of a multipart body that are begun in one turn of the event loop: each opens a file. */
const PARTS = 16
/** Stands before every boundary but the first. Source: RFC 2046, 5.1.1. */
const BEFORE_BOUNDARY = '\r\n--'

/**
 * Lets a reader of multipart bodies take a piece with many parts a few at a time. The system hands over up to 64 kB at once: some
 * twelve of the smallest workbooks, or eight hundred parts with nothing in them, which would hold the event loop while they are begun.
 */
export function takeInPortions(reader: Writable): void {
  const take = reader._write.bind(reader)
  reader._write = (chunk: Buffer, encoding, done) => {
    const portions = portionsOf(chunk)
    if (portions.length === 1) return take(chunk, encoding, done)
    void inTurn(
      reader,
      portions,
      (portion) =>
        new Promise((resolve, reject) => {
          take(portion, encoding, (error) => (error ? reject(error) : resolve()))
        }),
    ).then(() => done(), done)
  }
}

async function inTurn(
  reader: Writable,
  portions: readonly Buffer[],
  take: (portion: Buffer) => Promise<void>,
): Promise<void> {
  for (const portion of portions) {
    if (reader.destroyed) return
    await take(portion)
    await nextTurn()
  }
}

/** A piece of a body, cut after every {@link PARTS} boundaries. */
function portionsOf(chunk: Buffer): Buffer[] {
  const portions: Buffer[] = []
  let [start, begun] = [0, 0]
  for (let at = chunk.indexOf(BEFORE_BOUNDARY); at >= 0; at = chunk.indexOf(BEFORE_BOUNDARY, at + 1)) {
    begun++
    if (begun < PARTS) continue
    portions.push(chunk.subarray(start, at))
    ;[start, begun] = [at, 0]
  }
  portions.push(chunk.subarray(start))
  return portions
}
