import { bareUnit } from '../../cells/stated-unit.js'
import type { KnownUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import { leadOf, type View } from '../grid/view.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { momentIn } from '../words/moments.js'
import { headingAbove } from '../zero-flow/headings.js'
import { sideOf } from './classify.js'
import { type FoundField, made } from './found-field.js'

type IsTaken = (row: number, column: number) => boolean

/** Headings stand so many rows above a value, and so many values of one temperature in a line or column at most. */
const ROWS = 6
const MOST = 4
/** A number further from the first is no temperature of the same air, K or °F. */
const APART = 8

/**
 * All values that a log gives for one temperature behind its label, each under a label that says when or in which run it was taken:
 * "inside | start | 20.4 | end | 21.0", "inside | 20.4 / 21.0". None where there is only one.
 */
export function severalTemperatures(view: View, row: number, column: number, isTaken: IsTaken): FoundField[] {
  const label = readLabel(view.text(row, column) ?? '')
  if (!isOfOneSide(label)) return []
  const beside = valuesBeside(view, row, column, label, isTaken)
  const found = beside.length > 0 ? beside : valuesBelow(view, row, column, label, isTaken)
  const mean = found.filter(({ label: own }) => isMean(own, label))
  return mean.length === 1 ? mean : found.length > 1 ? inOrder(label, found) : []
}

const isMean = (own: Label, label: Label): boolean => says(own, 'mean') && !says(label, 'mean')

function valuesBeside(view: View, row: number, column: number, label: Label, isTaken: IsTaken): FoundField[] {
  const found: FoundField[] = []
  let words = ''
  let blanks = 0
  for (let at = view.right(row, column) + 1; blanks < 3 && found.length < MOST; at++) {
    const content = view.at(row, at)
    if (!content) blanks++
    else if (isTaken(row, at)) break
    else if (content.kind === 'text' && bareUnit(content.text)?.kind === 'temperature') continue
    else if (content.kind === 'text' && momentIn(content.text)) words = content.text
    else {
      const heading = headingAbove(view, row, at, ROWS)
      const own = valuesIn(
        content.kind === 'number' && !content.percent ? content : undefined,
        view.held(row, at),
      )
      const isMore = found.length === 0 || isAnother(heading, own[0], found[0])
      if (own.length === 0 || !isMore) break
      const over = heading && (momentIn(heading.text) || directionIn(heading)) ? heading.text : ''
      for (const { written, said } of own)
        found.push(
          ...fieldOf(view, { row, column: at }, { row, column }, label, written, words || over || said),
        )
      words = ''
      blanks = 0
    }
  }
  return found
}

/** "Inside | outside" over a line of values at the start and one at the end, or one for each run. */
function valuesBelow(view: View, row: number, column: number, label: Label, isTaken: IsTaken): FoundField[] {
  const found: FoundField[] = []
  for (let at = row + 1; found.length <= MOST; at++) {
    const content = view.at(at, column)
    if (content?.kind === 'text' && at === row + 1 && bareUnit(content.text)?.kind === 'temperature') continue
    if (content?.kind !== 'number' || isTaken(at, column)) break
    const lead = leadOf(view, at, column) ?? ''
    const isTimed = [1, 2, 3].some((step) => view.at(at, column - step)?.kind === 'time')
    if (!isTimed && !momentIn(lead) && !directionIn(readLabel(lead))) return []
    found.push(...fieldOf(view, { row: at, column }, { row, column }, label, content.written, lead))
  }
  return found.length <= MOST ? found : []
}

/** "Temperature in / out" is that of both sides. */
const IN_AND_OUT =
  / (?:in|inside|int|indoor) (?:out|outside|ext|outdoor) | (?:out|outside|ext|outdoor) (?:in|inside|int|indoor) /

const isOfOneSide = (label: Label): boolean =>
  sideOf(label) !== undefined &&
  (label.unit === undefined
    ? says(label, 'temperature') ||
      (label.tokens.length <= 2 && label.tokens.every((word) => word.length > 1))
    : label.unit.kind === 'temperature') &&
  !says(label, 'humidity') &&
  !IN_AND_OUT.test(label.padded)

/** Whether a number behind the first is a further value of it, and no humidity, accuracy or number of an instrument. */
function isAnother(
  heading: Label | undefined,
  next: { written: Written } | undefined,
  first: FoundField | undefined,
): boolean {
  if (!next || first?.content.kind !== 'number') return false
  const { unit, value } = next.written
  const isHeaded =
    heading === undefined ||
    momentIn(heading.text) !== undefined ||
    directionIn(heading) !== undefined ||
    says(heading, 'temperature')
  return (
    isHeaded &&
    (unit === undefined || unit.kind === 'temperature') &&
    Math.abs(value - first.content.written.value) <= APART
  )
}

function fieldOf(
  view: View,
  at: { row: number; column: number },
  labelAt: { row: number; column: number },
  label: Label,
  written: Written,
  words: string,
): FoundField[] {
  const beside = bareUnit(view.text(at.row, at.column + 1) ?? '') ?? temperatureOver(view, at)
  const field = made(view, at, labelAt, label, { kind: 'number', written }, beside)
  const isOfAir = field?.name === 'indoorTemperature' || field?.name === 'outdoorTemperature'
  return isOfAir ? [{ ...field, label: words === '' ? label : readLabel(`${label.text}, ${words}`) }] : []
}

/** "°C" below the heading of a column. */
function temperatureOver(
  view: View,
  { row, column }: { row: number; column: number },
): KnownUnit | undefined {
  const unit = bareUnit(view.text(row - 1, column) ?? '')
  return unit?.kind === 'temperature' ? unit : undefined
}

/** Two values behind "before / after" are those, as they stand. */
function inOrder(label: Label, found: FoundField[]): FoundField[] {
  if (found.length !== 2 || !says(label, 'before') || !says(label, 'after')) return found
  return found.map((field, index) => ({ ...field, label: readLabel(index === 0 ? 'before' : 'after') }))
}

interface Valued {
  written: Written
  said: string
}

/** The temperatures that one cell holds, each with the words around it: "20.4 °C (start), 21.0 °C (end)". */
function valuesIn(
  number: { readonly written: Written } | undefined,
  held: ReturnType<View['held']>,
): Valued[] {
  if (held?.kind === 'text' && held.numbers) {
    const unit = held.numbers.at(-1)?.unit
    return held.numbers.map((written) => ({ written: { ...(unit ? { unit } : {}), ...written }, said: '' }))
  }
  if (!number) return []
  const { note = '', ...written } = number.written
  // "18.0 ± 0.5 °C": how far off it may be.
  const more = /^(?:±|\+)/.test(note) ? [] : [...note.matchAll(MORE)]
  const [first] = more
  if (!first) return [{ written: number.written, said: '' }]
  const ends = [...more.slice(1).map(({ index }) => index), note.length]
  return [
    { written, said: note.slice(0, first.index) },
    ...more.map(([, figure = ''], index) => ({
      written: { ...written, value: Number(figure.replace(/[−–]/, '-').replace(',', '.')) },
      said: note.slice(more[index]?.index, ends[index]),
    })),
  ]
}

/** A further temperature in a remark. */
const MORE = /([-−–]?\d{1,2}(?:[.,]\d+)?)\s?(?:°\s?[CF]?|deg\b|[CF]\b)/g
