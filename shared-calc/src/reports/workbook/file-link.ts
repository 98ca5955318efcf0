/**
 * The address under which a spreadsheet program opens a file beside the workbook. A name may look like an address
 * (`javascript:…`, `https:…`): with `./` before it, it is a file's name to every program.
 * @param file - path as given: relative to the workbook, or absolute
 */
export function fileLink(file: string): string {
  // Half a character has no address.
  const path = encodeURI(file.replace(/\p{Surrogate}/gu, '\ufffd'))
    .replaceAll('#', '%23')
    .replaceAll('?', '%3F')
  if (/^[A-Za-z]:(\/|%5C)/.test(path)) return `file:///${path.replaceAll('%5C', '/')}`
  if (path.startsWith('/')) return `/${path.replace(/^\/+/, '')}`
  return path.startsWith('../') || path.startsWith('./') ? path : `./${path}`
}
