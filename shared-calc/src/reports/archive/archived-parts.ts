import { guardSizes } from '../../log/container/guard.js'
import { unpackBytes } from '../../log/container/unpack.js'
import { listEntries } from '../../log/container/zip.js'
import { refuse } from '../../log/problem.js'
import type { Parts } from '../workbook/zip/parts.js'

/** What all parts of an archived summary may unpack to, pictures included. A summary takes half a megabyte. */
const MOST_BYTES = 64 * 1024 * 1024

/** Every part of an archived workbook, unpacked within limits. Throws LogError. */
export function archivedParts(bytes: Uint8Array): Parts {
  const entries = listEntries(bytes)
  guardSizes(bytes.length, entries)
  const parts: Parts = new Map()
  let total = 0
  for (const [name, entry] of entries) {
    if (name.endsWith('/')) continue
    total += entry.size
    if (total > MOST_BYTES)
      refuse('too-large', `the file unpacks to more than ${MOST_BYTES / 1024 / 1024} MB: no summary does`)
    parts.set(name, unpackBytes(bytes, entry))
  }
  return parts
}
