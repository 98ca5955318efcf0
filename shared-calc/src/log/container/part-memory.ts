import { packedBytes, type ZipEntry } from './zip.js'

/**
 * Size of the largest part that is remembered, and how many of one kind: half a megabyte packed, some megabytes parsed.
 */
const LARGEST = { packed: 8 * 1024, unpacked: 64 * 1024 }
const MOST = 64

/**
 * Remembers what small parts held: workbooks of one make share their styles, relations and list of sheets byte for byte, and
 * need them unpacked and parsed only once. The packed bytes themselves are compared, so that nothing else can be taken for them.
 * What is handed out is shared: it must not be changed. Faults are not remembered.
 */
export function partMemory<T>(): (file: Uint8Array, entry: ZipEntry, parse: () => T) => T {
  const known = new Map<string, { packed: Uint8Array; result: T }>()
  return (file, entry, parse) => {
    const { name, crc, size, method } = entry
    if (size > LARGEST.unpacked || entry.packedSize > LARGEST.packed) return parse()
    const packed = packedBytes(file, entry)
    const key = `${name}|${crc}|${size}|${method}|${packed.length}`
    const before = known.get(key)
    if (before && same(before.packed, packed)) return before.result
    const result = parse()
    if (known.size >= MOST) known.clear()
    known.set(key, { packed: packed.slice(), result })
    return result
  }
}

/** Of equal length, as the key has it. */
function same(one: Uint8Array, other: Uint8Array): boolean {
  for (let index = 0; index < one.length; index++) if (one[index] !== other[index]) return false
  return true
}
