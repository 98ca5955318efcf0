import { LIMITS } from '../limits.js'
import { refuse } from '../problem.js'
import type { ZipEntry } from './zip.js'

const mebibytes = (bytes: number) => `${Math.round(bytes / 1024 / 1024)} MB`

/** Refuses a zip whose declared sizes no honest workbook has. Nothing is unpacked. Throws LogError. */
export function guardSizes(fileBytes: number, entries: ReadonlyMap<string, ZipEntry>): void {
  let packed = 0
  let unpacked = 0
  for (const entry of entries.values()) {
    packed += entry.packedSize
    unpacked += entry.size
    if (entry.size > LIMITS.partBytes && isRead(entry.name))
      refuse(
        'too-large',
        `the part ${entry.name} unpacks to ${mebibytes(entry.size)}; at most ${mebibytes(LIMITS.partBytes)} are read`,
      )
    if (entry.size > LIMITS.ratioFromBytes && entry.size > LIMITS.ratio * entry.packedSize)
      refuse(
        'compression-bomb',
        `the part ${entry.name} unpacks to ${Math.round(entry.size / Math.max(1, entry.packedSize))} times its size; at most ${LIMITS.ratio} times is accepted`,
      )
  }
  // Overlapping parts are how small bombs are built: together they claim more bytes than the file has.
  if (packed > fileBytes) refuse('compression-bomb', 'the parts of the file overlap')
  if (unpacked > LIMITS.totalBytes)
    refuse(
      'too-large',
      `the file unpacks to ${mebibytes(unpacked)}; at most ${mebibytes(LIMITS.totalBytes)} are read`,
    )
}

/** Pictures and other payload are never unpacked, so only text parts are held to the part's limit. */
function isRead(name: string): boolean {
  return /\.(xml|rels|vml)$/i.test(name)
}
