import { addressOf, parseAddress, withoutSheet } from '../../grid/address.js'
import type { ZeroEntry } from './entry.js'

/**
 * "Depressurisation: zero flow before | zero flow after" over two lists: the direction stands in the first heading, and goes for the
 * second.
 */
export function withDirectionInFront(entries: readonly ZeroEntry[]): ZeroEntry[] {
  const before = new Map(
    entries.filter(({ which }) => which === 'before').map((entry) => [entry.labelCell, entry]),
  )
  return entries.map((entry) => {
    if (entry.direction || entry.which !== 'after') return entry
    const place = parseAddress(withoutSheet(entry.labelCell))
    if (!place || place.column === 0) return entry
    const sheet = entry.labelCell.slice(0, -withoutSheet(entry.labelCell).length)
    const { direction } = before.get(`${sheet}${addressOf(place.row, place.column - 1)}`) ?? {}
    return direction ? { ...entry, direction } : entry
  })
}
