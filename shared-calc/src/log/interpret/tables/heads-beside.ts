import { says } from '../words/label.js'
import { type Column, type Head, headAt, isFlowLike, isPressureLike } from './heads.js'

/** Tables side by side begin within so many rows of one another. */
const ROWS = 40

/**
 * Tables side by side whose headings stand in different rows: each keeps the columns that it heads itself, and loses those that are headed
 * by the other.
 */
export function headsBeside(heads: readonly Head[]): Head[] {
  const own = heads.map(({ columns }) => columns.filter(({ label }) => label.text !== ''))
  const tables = heads.map((_, index) => isTable(own[index] ?? []))
  return heads.map((head, index) => {
    if (!tables[index]) return head
    const others = heads.flatMap((other, at) => {
      const isBeside =
        other !== head &&
        tables[at] &&
        other.first !== head.first &&
        Math.abs(other.first - head.first) <= ROWS
      const theirs = own[at] ?? []
      const isApart = isBeside && theirs.filter(isOfReadings).every((one) => !has(own[index] ?? [], one))
      // "B" in a line of the other table, which begins further up, heads nothing here.
      const isInside = head.top >= other.first
      if (!isApart) return []
      const dropped = theirs.filter((one) => isInside || !has(own[index] ?? [], one))
      return isInside ? [...dropped, ...remarksOf(theirs, head.columns)] : dropped
    })
    const columns = head.columns.filter((column) => !has(others, column))
    return others.length > 0 && isTable(columns) ? withOnly(head, columns) : head
  })
}

/** Columns of a head that lie within another table or right beside it, where its remarks stand. */
function remarksOf(theirs: readonly Column[], columns: readonly Column[]): Column[] {
  const places = theirs.map(({ at }) => at)
  const [first, last] = [Math.min(...places) - 1, Math.max(...places) + 1]
  return columns.filter((one) => one.at >= first && one.at <= last && !isOfReadings(one))
}

/** A title over the other table is none of its headings. */
function withOnly({ view, first }: Head, columns: readonly Column[]): Head {
  const at = columns.map((column) => column.at)
  const head = headAt(
    view,
    first,
    at.filter((column) => view.number(first, column) !== undefined),
  )
  return { ...head, columns: head.columns.filter((column) => at.includes(column.at)) }
}

const isOfReadings = ({ label, unit }: Column): boolean =>
  !says(label, 'zero') && (isPressureLike(label, unit) || isFlowLike(label, unit))

const isTable = (columns: readonly Column[]): boolean =>
  columns.some(({ label, unit }) => label.text !== '' && isPressureLike(label, unit)) &&
  columns.some(({ label, unit }) => label.text !== '' && isFlowLike(label, unit))

const has = (columns: readonly Column[], { at }: Column): boolean => columns.some((one) => one.at === at)
