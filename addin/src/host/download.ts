export const XLSX_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** Hands a file to the browser's own download. */
export function saveFile(bytes: Uint8Array, fileName: string, type = XLSX_TYPE): void {
  const address = URL.createObjectURL(new Blob([Uint8Array.from(bytes)], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
  // The browser reads the blob after the click returns.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

/** Letters, digits and dashes only: the name has to live on every file system. */
export function plainName(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
}
