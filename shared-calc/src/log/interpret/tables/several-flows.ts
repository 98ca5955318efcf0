import { toRecordUnit } from '../../cells/units.js'
import { says } from '../words/label.js'
import type { KnownColumn, Segment } from './columns.js'

/** A column that is the sum or the mean of others, row by row. */
export interface ColumnOfOthers {
  readonly column: KnownColumn
  readonly parts: readonly KnownColumn[]
  readonly as: 'sum' | 'mean'
}

/** A column that is the sum of two or more others, row by row. */
export function totalOf(segment: Segment, flows: readonly KnownColumn[]): ColumnOfOthers | undefined {
  if (flows.length < 3) return undefined
  for (const column of [...flows].reverse()) {
    const others = flows.filter((one) => one !== column && mayBeOfOneUnit(one, column))
    if (others.length >= 2 && addsUp(segment, column, others)) return { column, parts: others, as: 'sum' }
  }
  return undefined
}

/** The unit may stand over the sum or the mean only; fans in l/s may have their total in m³/h. */
const mayBeOfOneUnit = (part: KnownColumn, whole: KnownColumn | undefined): boolean =>
  part.unit === undefined ||
  part.unit.unit === whole?.unit?.unit ||
  (part.unit.kind === 'flow' && whole?.unit?.kind === 'flow')

/** A flow in the unit of records where its column or the total states one, else as written. */
const comparable = (value: number, { unit }: KnownColumn, total: KnownColumn): number => {
  const own = unit ?? total.unit
  return own?.kind === 'flow' ? toRecordUnit(value, own) : value
}

/** A column that is the mean of two or more others, row by row: samples of each station. */
export function meanOf(segment: Segment, columns: readonly KnownColumn[]): ColumnOfOthers | undefined {
  const column = columns.find(({ label }) => says(label, 'average')) ?? besideSamples(columns)
  const others = columns.filter((one) => one !== column && mayBeOfOneUnit(one, column))
  return column && others.length >= 2 && addsUp(segment, column, others, 1 / others.length)
    ? { column, parts: others, as: 'mean' }
    : undefined
}

/** "Δp" beside "Δp 1 | Δp 2 | Δp 3": the only one without a number. */
function besideSamples(columns: readonly KnownColumn[]): KnownColumn | undefined {
  const words = ({ label }: KnownColumn) => label.tokens.filter((token) => !/^\d+$/.test(token)).join(' ')
  const isNumbered = ({ label }: KnownColumn) => label.tokens.some((token) => /^\d+$/.test(token))
  const [only, ...more] = columns.filter((column) => !isNumbered(column))
  const isOne = only && more.length === 0 && columns.every((column) => words(column) === words(only))
  return isOne ? only : undefined
}

/** P1, P2, P3 with Q1, Q2, Q3 are samples of one station; fans share one building pressure. */
export function areSamples({ columns }: Segment, flows: readonly KnownColumn[]): boolean {
  const marks = (own: readonly KnownColumn[]) =>
    own.flatMap(({ label }) => label.tokens.flatMap((token) => /([1-9])$/.exec(token)?.[1] ?? []))
  const pressures = marks(columns.filter(({ role }) => role === 'pressure' || role === 'induced'))
  return pressures.length > 1 && marks(flows).filter((mark) => pressures.includes(mark)).length > 1
}

function addsUp(
  { view, head }: Segment,
  total: KnownColumn,
  parts: readonly KnownColumn[],
  share = 1,
): boolean {
  let checked = 0
  let fitting = 0
  for (let row = head.first; row < Math.min(view.rows, head.first + 60); row++) {
    const sum = view.number(row, total.at)
    const own = parts.map((part) => {
      const value = view.number(row, part.at)
      return value === undefined ? undefined : comparable(value, part, total)
    })
    if (sum === undefined || sum === 0) continue
    const [whole, lastDigit] = [sum, 10 ** -decimals(sum)].map((one) => comparable(one, total, total)) as [
      number,
      number,
    ]
    if (own.every((one) => one === undefined)) continue
    checked++
    const added = share * own.reduce<number>((all, one) => all + (one ?? 0), 0)
    if (Math.abs(added - whole) <= Math.max(0.006 * Math.abs(whole), 1.01 * lastDigit)) fitting++
  }
  return checked >= 3 && fitting >= 0.8 * checked
}

const decimals = (value: number): number => (String(value).split('.')[1] ?? '').length

/** Columns of fan 1, fan 2 …: the same words but for a figure or letter. */
export function distinctFans(columns: readonly KnownColumn[]): KnownColumn[] {
  const marks = columns.flatMap((column) => {
    const mark = column.label.tokens
      .map((token) => /^(?:#|fan|q|gerat|geblase|ventilateur|dp|p)?([1-9]|[ab])$/.exec(token)?.[1])
      .find((one) => one)
    const words = column.label.tokens.filter((token) => !/^(?:#|fan|q|p)?([1-9]|[ab])$/.test(token)).join(' ')
    return mark ? [{ column, mark, key: `${words}|${column.unit?.unit ?? ''}` }] : []
  })
  const [first] = marks
  const alike = marks.filter(({ key }) => key === first?.key)
  const named = alike.some(
    ({ column }) => says(column.label, 'device') || /^(q|fan)[1-9ab]$/.test(column.label.tokens[0] ?? ''),
  )
  return named && alike.length > 1 && new Set(alike.map(({ mark }) => mark)).size === alike.length
    ? alike.map(({ column }) => column)
    : []
}
