const TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1
  return value >>> 0
})

/**
 * CRC-32 of bytes, continuing from an earlier value (0 to begin). Source: ISO 3309 / ITU-T V.42, as zip uses it.
 * Checked on every part read: a flipped bit in a packed sheet could otherwise change a digit unseen.
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let value = ~before
  for (let index = 0; index < bytes.length; index++)
    value = (value >>> 8) ^ (TABLE[(value ^ (bytes[index] as number)) & 0xff] as number)
  return ~value >>> 0
}
