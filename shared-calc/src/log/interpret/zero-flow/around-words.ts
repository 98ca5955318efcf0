import { bareUnit } from '../../cells/stated-unit.js'
import { formPlaces, type View } from '../grid/view.js'
import type { Concept } from '../words/concepts.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { isBehindBlank, isInColumn } from './column-of-numbers.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'
import { MOST_LABELS } from './find-labelled.js'
import { isCount, isUnitOrBlank, namesNoValue, SPREAD, statisticIn } from './headings.js'
import { type Word, zeroTitle } from './zero-title.js'

/** How far from a word of zero flow its values are looked for. */
const REACH = { down: 14, right: 12 }

/** Things that have values of their own beside and below those of zero flow. */
const OTHERS: readonly Concept[] = [
  'temperature',
  'humidity',
  'wind',
  'barometer',
  'volume',
  'area',
  'height',
  'altitude',
  'date',
  'time',
  'speed',
  'coefficient',
  'exponent',
  'uncertainty',
  'target',
  'range',
]

/** What of a sheet is known already. */
export interface Known {
  isTaken(row: number, column: number): boolean
  /** Rows of tables that hold a reading, or zero flow that was read. */
  isRead(cell: string): boolean
}

/**
 * Every number that a word of zero flow governs by line, column or title and that nothing has read: what a reading of the log has to
 * account for, whatever shape the log has. Figures that are no pressures of zero flow (extremes, counts, the fan's own) are left out.
 */
export function numbersAroundWords(view: View, known: Known): ZeroEntry[] {
  const found = new Map<string, ZeroEntry>()
  const sheet = readLabel(view.name)
  if (says(sheet, 'zero'))
    for (const [row, column] of formPlaces(view)) {
      const cell = view.address(row, column)
      const entry = known.isRead(cell)
        ? undefined
        : governed(view, row, column, known, { label: sheet, row: 0, column: 0 })
      if (entry) found.set(cell, entry)
    }
  let looked = 0
  for (let row = 0; row < view.rows; row++)
    for (let column = 0; column < view.columns; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 90) continue
      if (++looked > MOST_LABELS) return together([...found.values()])
      if (!says(readLabel(text), 'zero')) continue
      for (let at = row; at <= row + REACH.down; at++)
        for (let right = at === row ? column + 1 : column; right <= column + REACH.right; right++) {
          // Most places hold no number, and need no address.
          if (view.number(at, right) === undefined) continue
          const cell = view.address(at, right)
          if (found.has(cell) || known.isRead(cell) || isOfTableBeside(view, at, right, column)) continue
          const entry = governed(view, at, right, known)
          if (entry) found.set(cell, entry)
        }
    }
  return together([...found.values()])
}

/** Past the values behind the word and a blank, and one of several numbers below one another. */
const isOfTableBeside = (view: View, row: number, column: number, word: number): boolean =>
  isBehindBlank(view, row, word, column) && isInColumn(view, row, column)

/** The numbers of one line that belong to the same word, moment and direction are one list. */
function together(entries: readonly ZeroEntry[]): ZeroEntry[] {
  const lists = new Map<string, ZeroEntry>()
  for (const entry of entries) {
    const key = [entry.labelCell, entry.row, entry.which, entry.direction].join('|')
    const known = lists.get(key)
    lists.set(key, known ? { ...known, figures: [...known.figures, ...entry.figures] } : entry)
  }
  return [...lists.values()]
}

/** The number of a cell with the words that make it zero flow; undefined where they make it something else. */
function governed(
  view: View,
  row: number,
  column: number,
  { isTaken, isRead }: Known,
  sheet?: Word,
): ZeroEntry | undefined {
  const content = view.at(row, column)
  if (content?.kind !== 'number' || content.percent) return undefined
  const { written } = content
  const beside = bareUnit(view.text(row, column + 1) ?? '')
  const unit = written.unit ?? beside
  if ((unit && unit.kind !== 'pressure') || Math.abs(written.value) > LIKELY_MOST) return undefined
  if (isOfCount(view, row, column) || SPREAD.test(view.text(row, column - 1) ?? '')) return undefined
  const lead = textsTowards(view, column, (at) => ({ row, column: at }))
  // Beside "end" in a column with nothing between it and its heading.
  const isOfMoment = lead.neutral.some(({ label }) => momentIn(label) !== undefined)
  const head = textsTowards(view, row, (at) => ({ row: at, column }), isOfMoment ? REACH.down : undefined)
  const inTable = isTaken(row, column)
  if (inTable && !(lead.thing && says(lead.thing.label, 'zero') && !rowIsRead(view, row, isRead)))
    return undefined
  const heads = [...head.neutral, head.thing].filter((one) => one && !isOfItsLine(view, one))
  const labels = [...lead.neutral, lead.thing, ...heads].flatMap((one) => one?.label ?? [])
  if (labels.some(isNoValue)) return undefined
  const isNamed = lead.thing !== undefined || head.thing !== undefined
  const word =
    wordOver(view, row, column, lead, head) ??
    (isNamed ? undefined : sheet) ??
    (/[-.]/.test(String(written.value)) ? wordOfLine(view, row, lead) : undefined)
  if (!word || isOther(word)) return undefined
  // What is hidden beside a word that is shown is of something else.
  if (view.hidden(row, column) && !view.hidden(word.row, word.column)) return undefined
  if (word.label.unit && word.label.unit.kind !== 'pressure') return undefined
  const said = [...lead.neutral, lead.thing, ...head.neutral, head.thing, word].flatMap(
    (one) => one?.label ?? [],
  )
  const which = said.map(momentIn).find((one) => one)
  const direction =
    said.map((label) => directionIn(label)).find((one) => one) ?? directionIn(readLabel(view.name))
  return {
    view,
    row,
    column,
    figures: [{ ...written, ...(unit ? { unit } : {}), cell: view.address(row, column) }],
    label: word.label.text,
    labelCell: view.address(word.row, word.column),
    ...(which ? { which } : {}),
    ...(direction ? { direction } : {}),
  }
}

interface Texts {
  /** Words that say when, which way or which one: "before", "depressurisation", "mean", "3". */
  readonly neutral: readonly Word[]
  /** The nearest text that names a thing. */
  readonly thing: Word | undefined
}

/** The texts in front of a number or over it, past other numbers and units, until one names a thing. */
function textsTowards(
  view: View,
  from: number,
  place: (at: number) => { row: number; column: number },
  mostBlanks = 2,
): Texts {
  const neutral: Word[] = []
  let blanks = 0
  for (let at = from - 1; at >= Math.max(0, from - REACH.down) && blanks <= mostBlanks; at--) {
    const { row, column } = place(at)
    const content = view.at(row, column)
    if (!content) blanks++
    if (content?.kind !== 'text') continue
    blanks = 0
    if (isUnitOrBlank(content.text)) continue
    const label = readLabel(content.text)
    if (!isNeutral(label)) return { neutral, thing: { label, row, column } }
    neutral.push({ label, row, column })
  }
  return { neutral, thing: undefined }
}

const momentIn = (label: Label): 'before' | 'after' | undefined => {
  const [before, after] = [says(label, 'before'), says(label, 'after')]
  return before === after ? undefined : before ? 'before' : 'after'
}

const isNeutral = (label: Label): boolean =>
  !says(label, 'zero') &&
  label.tokens.length <= 3 &&
  (momentIn(label) !== undefined ||
    directionIn(label) !== undefined ||
    says(label, 'average') ||
    says(label, 'index') ||
    label.tokens.every((token) => token.length === 1 || /^\d+$/.test(token)))

const isNoValue = (label: Label): boolean =>
  namesNoValue(label) || isCount(label) || statisticIn(label.text) === 'other' || isOfDevice(label)

/** "Fan pressure", and not "Fan closed (Pa)". */
const isOfDevice = (label: Label): boolean =>
  says(label, 'device') && !(says(label, 'zero') && !says(label, 'pressure'))

const isOther = ({ label }: Word): boolean => isOfDevice(label) || OTHERS.some((other) => says(label, other))

/** The word of zero flow a number belongs to: in its line, over its column, or in a title over a table of moments or directions. */
function wordOver(view: View, row: number, column: number, lead: Texts, head: Texts): Word | undefined {
  if (lead.thing && says(lead.thing.label, 'zero')) return lead.thing
  if (lead.thing && (isOther(lead.thing) || says(lead.thing.label, 'flow'))) return undefined
  if (head.thing && says(head.thing.label, 'zero'))
    return isOfItsLine(view, head.thing) ? undefined : head.thing
  const isNamed = [...lead.neutral, ...head.neutral].some(
    ({ label }) => momentIn(label) !== undefined || directionIn(label) !== undefined,
  )
  if (!isNamed || lead.thing || (head.thing && isOther(head.thing))) return undefined
  return zeroTitle(view, row, column)
}

/** "Zero flow | start | −1.6 | half way | −1.1": in front of the words nobody knows the line begins with that of zero flow. */
function wordOfLine(view: View, row: number, { thing }: Texts): Word | undefined {
  if (!thing || isOther(thing) || says(thing.label, 'flow')) return undefined
  for (let column = thing.column - 1; column >= Math.max(0, thing.column - REACH.right); column--) {
    const text = view.text(row, column)
    if (text === undefined || text.length > 90) continue
    const label = readLabel(text)
    if (says(label, 'zero')) return { label, row, column }
    if (isOther({ label, row, column })) return undefined
  }
  return undefined
}

/** A word with values of its own beside it is no heading of what stands below. */
const isOfItsLine = (view: View, { row, column }: Word): boolean =>
  [1, 2, 3].some((step) => view.number(row, column + step) !== undefined)

/** 1, 2, 3 … over or in front of values numbers them. */
function isOfCount(view: View, row: number, column: number): boolean {
  const along = (step: (by: number) => number | undefined) => {
    const value = step(0) as number
    if (!Number.isInteger(value) || value < 1) return false
    const up = (by: number) => step(by) === value + by
    return (up(1) || up(-1)) && Array.from({ length: value - 1 }, (_, index) => -1 - index).every(up)
  }
  return along((by) => view.number(row, column + by)) || along((by) => view.number(row + by, column))
}

const rowIsRead = (view: View, row: number, isRead: (cell: string) => boolean): boolean =>
  Array.from({ length: Math.min(view.columns, 40) }, (_, column) => view.address(row, column)).some(isRead)
