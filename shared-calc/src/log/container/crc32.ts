/** Four tables of 256: the effect of a byte that lies 0 to 3 bytes back, so that four bytes are taken at once. */
const TABLES = new Int32Array(4 * 256)
for (let index = 0; index < 256; index++) {
  let value = index
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1
  TABLES[index] = value
}
for (let index = 256; index < TABLES.length; index++) {
  const before = TABLES[index - 256] as number
  TABLES[index] = (before >>> 8) ^ (TABLES[before & 0xff] as number)
}

/**
 * CRC-32 of bytes, continuing from an earlier value (0 to begin). Source: ISO 3309 / ITU-T V.42, as zip uses it.
 * Checked on every part read: a flipped bit in a packed sheet could otherwise change a digit unseen.
 */
export function crc32(bytes: Uint8Array, before = 0): number {
  let value = ~before
  let index = 0
  for (; index + 4 <= bytes.length; index += 4) {
    value ^=
      (bytes[index] as number) |
      ((bytes[index + 1] as number) << 8) |
      ((bytes[index + 2] as number) << 16) |
      ((bytes[index + 3] as number) << 24)
    value =
      (TABLES[768 + (value & 0xff)] as number) ^
      (TABLES[512 + ((value >>> 8) & 0xff)] as number) ^
      (TABLES[256 + ((value >>> 16) & 0xff)] as number) ^
      (TABLES[value >>> 24] as number)
  }
  for (; index < bytes.length; index++)
    value = (value >>> 8) ^ (TABLES[(value ^ (bytes[index] as number)) & 0xff] as number)
  return ~value >>> 0
}
