import { placeIn, type View } from '../grid/view.js'
import type { SheetTables } from '../sheet-tables.js'
import type { Figure } from '../tables/table-row.js'
import { directionIn, readLabel, says } from '../words/label.js'
import type { ZeroEntry } from './entry.js'
import { isUnitOrBlank, statisticIn } from './headings.js'

type IsTaken = (row: number, column: number) => boolean

/** Rows above a value in which its heading may stand; a gap ends them. */
const HEADED = 8

/** Things whose values may stand behind those of zero flow, in the same line. */
const OTHER_THINGS = ['temperature', 'device', 'humidity', 'wind', 'barometer', 'volume'] as const

/**
 * Parts the values of one label where what stands over or between them says that they are not of one kind: "Building | Fan",
 * "2025 | 2026", "−1.2 | Te | 4.5", "mean | st. dev.". Values of the flow device and of other things are none, and beside a mean
 * neither is what has a heading of its own. Of the others that of the year of the test is kept, else the first.
 * @param years - years in which the log dates its tests
 * @returns what is kept, what else it may be, and what it is not
 */
export function ofOneKind(
  entry: ZeroEntry,
  tables: SheetTables | undefined,
  years: readonly string[],
): { kept: ZeroEntry; rivals: readonly ZeroEntry[]; others: readonly ZeroEntry[] } {
  const { view, figures } = entry
  if (figures.length < 2) return { kept: entry, rivals: [], others: [] }
  const placed = figures.map((figure) => ({ figure, ...cellIn(view, figure) }))
  // Over the flows of several houses their names are headings too.
  const ofHouses = tables?.runs.some(({ houseColumn }) => placed.some(({ column }) => column === houseColumn))
  if (ofHouses) return { kept: entry, rivals: [], others: [] }
  const isTaken = tables?.isTaken ?? (() => false)
  const heads = placed.map(({ row, column }) => headOver(view, row, column, isTaken))
  // The name of the house over the first value of a line is no heading of it.
  const isHeaded = heads.every((head) => head !== '')
  const hasMean = placed.some(({ row, column }) => statisticIn(textOver(view, row, column)) === 'mean')
  const kinds = new Map<string, Figure[]>()
  let behind = ''
  for (const [index, { figure, row, column }] of placed.entries()) {
    const before = placed[index - 1]
    if (before?.row === row) behind = nameBetween(view, row, before.column, column) ?? behind
    const head = heads[index] as string
    const kind = `${behind}|${isHeaded || hasMean || isOfOther(head) ? head : ''}`
    kinds.set(kind, [...(kinds.get(kind) ?? []), figure])
  }
  if (kinds.size < 2) return { kept: entry, rivals: [], others: [] }
  const parts = [...kinds].map(([kind, own]) => ({ kind, entry: { ...entry, figures: own } }))
  const likely = parts.filter(({ kind }) => !isOfOther(kind))
  const ofYear = likely.filter(({ kind }) => years.some((year) => kind.endsWith(year)))
  const ofMean = hasMean ? likely.filter(({ kind }) => kind.endsWith('|')) : []
  const kept = (ofMean[0] ?? ofYear[0] ?? likely[0] ?? parts[0]) as (typeof parts)[number]
  const left = likely.flatMap((one) => (one === kept ? [] : one.entry))
  if (hasMean) return { kept: kept.entry, rivals: [], others: left.map(byHeading) }
  return ofYear.length === 1
    ? { kept: kept.entry, rivals: [], others: left }
    : { kept: kept.entry, rivals: left, others: [] }
}

/** An entry named by what stands over its first value: its label is that of the mean beside it. */
function byHeading(entry: ZeroEntry): ZeroEntry {
  const [figure] = entry.figures
  if (!figure) return entry
  const { row, column } = cellIn(entry.view, figure)
  return { ...entry, label: textOver(entry.view, row, column) ?? entry.label, labelCell: figure.cell }
}

function cellIn(view: View, { cell }: Figure): { row: number; column: number } {
  const place = placeIn(view, cell) ?? { row: -1, column: -1 }
  return view.turned ? { row: place.column, column: place.row } : place
}

const isOfOther = (text: string): boolean => OTHER_THINGS.some((thing) => says(readLabel(text), thing))

/** A text between two values that names a thing of its own. */
function nameBetween(view: View, row: number, from: number, to: number): string | undefined {
  for (let at = to - 1; at > from; at--) {
    const text = view.text(row, at)
    if (text === undefined || isUnitOrBlank(text)) continue
    const label = readLabel(text)
    if (isNeutral(text)) continue
    if (isOfOther(text) || label.tokens.some((one) => one.length > 2)) return text
  }
  return undefined
}

/** The nearest text over a value that is no unit. */
function textOver(view: View, row: number, column: number): string | undefined {
  for (let at = row - 1; at >= Math.max(0, row - HEADED); at--) {
    const text = view.text(at, column)
    if (text !== undefined && !isUnitOrBlank(text)) return text
  }
  return undefined
}

/** What stands over a value, but for numbers of values, moments and directions, which are told apart elsewhere. */
function headOver(view: View, row: number, column: number, isTaken: IsTaken): string {
  for (let at = row - 1; at >= Math.max(0, row - HEADED) && !isTaken(at, column); at--) {
    const content = view.at(at, column)
    if (!content) return ''
    if (content.kind === 'number' && isYear(content.written.value)) return String(content.written.value)
    if (content.kind !== 'text' || isUnitOrBlank(content.text)) continue
    if (isNeutral(content.text)) return ''
    return readLabel(content.text)
      .tokens.filter((token) => !/^\d{1,3}$|^\p{L}$/u.test(token))
      .join(' ')
  }
  return ''
}

const isYear = (value: number): boolean => Number.isInteger(value) && value > 1990 && value < 2100

const isNeutral = (text: string): boolean => {
  const label = readLabel(text)
  return (
    (['zero', 'before', 'after', 'index'] as const).some((one) => says(label, one)) ||
    statisticIn(text) === 'mean' ||
    directionIn(label) !== undefined
  )
}
