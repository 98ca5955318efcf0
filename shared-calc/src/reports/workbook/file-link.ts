import type { Cell } from 'exceljs'
import { fonts } from './styles.js'

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

/** The file that a link leads to, as it was given; undefined where it is no address of a file. */
export function fileOfLink(link: string): string | undefined {
  try {
    const [address = ''] = link.split('#')
    const path = decodeURIComponent(address.replace(/^file:\/\/(?=\/)/, ''))
    return path.replace(/^\.\//, '').replace(/^\/(?=[A-Za-z]:\/)/, '')
  } catch {
    return undefined
  }
}

/** Writes a text that opens a file, or a cell of it (`Working!C12`). */
export function linkTo(cell: Cell, text: string, file: string, place?: string): void {
  const path = fileLink(file)
  cell.value = { text, hyperlink: place === undefined ? path : `${path}#${place}` }
  cell.font = { ...fonts.body, underline: true, color: { argb: 'FF1F4E5F' } }
}
