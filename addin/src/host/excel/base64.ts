/** Bytes as base64, as Excel takes a workbook. In pieces: an argument list has a length limit. */
export function toBase64(bytes: Uint8Array): string {
  let text = ''
  for (let start = 0; start < bytes.length; start += 0x8000)
    text += String.fromCharCode(...bytes.subarray(start, start + 0x8000))
  return btoa(text)
}
