import { readParts, writeParts } from './parts.js'

/** The same package with fixed times and order, so that equal content is equal bytes. RangeError when not a zip. */
export function rezip(zip: Uint8Array): Uint8Array {
  return writeParts(readParts(zip))
}
