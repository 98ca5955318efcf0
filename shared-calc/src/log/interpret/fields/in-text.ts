import { readDateText } from '../../cells/dates.js'
import { writtenIn } from '../../cells/written.js'
import { type Content, dayContent } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'
import type { FieldName } from './classify.js'
import { type FoundField, made } from './found-field.js'

/** The values of a text that holds its labels too. */
export function fieldsInText(view: View, row: number, column: number, text: string): FoundField[] {
  const lines = text.split(/[\r\n]+/).filter((line) => line.trim() !== '')
  if (lines.length > 1) return lines.flatMap((line) => fieldsInText(view, row, column, line.trim()))
  const pieces = /\d/.test(text) ? piecesOf(text) : []
  const told = pieces.flatMap(({ label, rest }) => inPiece(view, row, column, label, rest) ?? [])
  if (told.length >= 2) return told
  const parts = text.split(/[;|]|\s\/\s|\s{2,}/)
  // "House: Larch Cottage / Date: 12.03.2026": each label with its own value.
  const isList = parts.length > 1 && parts.every((part) => /^\s*\p{L}[^:]*:\s*\S/u.test(part))
  const own = (isList ? parts : [text]).flatMap((part) => inOwnCell(view, row, column, part) ?? [])
  if (own.length > 0) return own
  const day = dayOfTest(view, row, column, text)
  if (day) return [day]
  return pieces.length === 1 ? told.filter((field) => isPlain(field, text)) : []
}

function inPiece(
  view: View,
  row: number,
  column: number,
  label: string,
  rest: string,
): FoundField | undefined {
  const at = { row, column }
  const written = writtenIn(rest, view.decimal)
  return made(view, at, at, readLabel(label), written && { kind: 'number', written }, undefined)
}

/** What is stated by a label, a number and a unit in one cell. */
const STATED: readonly FieldName[] = [
  'volume',
  'envelopeArea',
  'floorArea',
  'indoorTemperature',
  'outdoorTemperature',
  'barometer',
]

/** "Volume 305 m³", "Inside 20 °C" with nothing behind it: the number has a unit and the cell no other words. */
const isPlain = ({ name, content }: FoundField, text: string): boolean =>
  text.length <= 50 &&
  STATED.includes(name) &&
  content.kind === 'number' &&
  content.written.unit !== undefined &&
  // "Inside 1F" is the first floor.
  !(content.written.unit.unit === 'degF' && Math.abs(content.written.value) < 10) &&
  content.written.note === undefined

/** "Volume: 412.6 m³" or "Volume = 412.6 m³" in one cell. */
function inOwnCell(view: View, row: number, column: number, text: string): FoundField | undefined {
  const colon = text.indexOf(':')
  const at = colon > 0 ? colon : text.indexOf('=')
  if (at <= 0 || at === text.length - 1) return undefined
  const label = readLabel(text.slice(0, at))
  const rest = text.slice(at + 1).trim()
  if (rest === '' || label.tokens.length > 5) return undefined
  const written = writtenIn(rest, view.decimal)
  const date = readDateText(rest)
  const content: Content = date
    ? dayContent(date)
    : written
      ? { kind: 'number', written }
      : { kind: 'text', text: rest }
  return made(view, { row, column }, { row, column }, label, content, undefined)
}

const DAY = /(?<![\d.,/-])(?:\d{1,2}[./-]\d{1,2}[./-](?:19|20)\d\d|(?:19|20)\d\d-\d\d-\d\d)(?![\d/-])/g

/** "Test", "Dichtheitsprüfung", "täthetsprovning" and so on. */
const OF_TEST =
  /test|prufung|pruefung|messung|essai|mesure|provning|proving|maling|prova$|ensayo|ensaio|meting|badani|pomiar|zkousk|mereni|mittaus/

/** "Airtightness test of 12.03.2026" as a title: its one date is that of the test. */
function dayOfTest(view: View, row: number, column: number, text: string): FoundField | undefined {
  if (text.length > 80) return undefined
  const [day, ...more] = text.match(DAY) ?? []
  if (day === undefined || more.length > 0) return undefined
  const label = readLabel(text.replace(day, ' '))
  const isOfTest = says(label, 'date') || label.tokens.some((token) => OF_TEST.test(token))
  if (!isOfTest || label.tokens.length > 8 || says(label, 'stage') || says(label, 'method')) return undefined
  const date = readDateText(day)
  if (!date) return undefined
  return made(view, { row, column }, { row, column }, label, dayContent(date), undefined)
}

/** A label with what follows it: "außen" and "8 °C". */
interface Piece {
  readonly label: string
  readonly rest: string
}

/** An air pressure with its unit and nothing else. */
const AIR_PRESSURE = /^(?:\d{3,4}(?:[.,]\d+)?\s*(?:mbar|hPa|mb)|\d{2,3}[.,]\d+\s*kPa)$/i

/** What says "about" in front of a number. */
const ABOUT = /(?:[:=~≈]|\b(?:ca|circa|approx|env|about|is|was|war|ist)\b\.?)\s*$/i

/** "in 70 °F out 34 °F": the unit of the first number ends it where a word with another number follows. */
function twoIn(piece: string): string[] {
  const [, first, second] = /^(\D+\d[\d.,]*\s?[°\p{L}]{1,3}[²³]?)\s+(\p{L}\D*\d[\s\S]*)$/u.exec(piece) ?? []
  return first && second && writtenIn(first.replace(/^\D+/, ''), '.')?.unit ? [first, second] : [piece]
}

/**
 * The values of a line written as a sentence: "Volume 320 m³, inside 20 °C, outside 8 °C". A comma between figures parts no values.
 */
function piecesOf(text: string): Piece[] {
  const parts = text.split(/[;|]|,(?!\d)|\s\/\s|\s{2,}|\s[–—-]\s/).flatMap(twoIn)
  return parts.flatMap((piece): Piece[] => {
    // "1013 mbar" needs no word.
    if (AIR_PRESSURE.test(piece.trim())) return [{ label: piece.trim(), rest: piece.trim() }]
    const digit = piece.search(/\d/)
    if (digit <= 0) return []
    const from = '-−–+'.includes(piece[digit - 1] as string) ? digit - 1 : digit
    let label = piece.slice(0, from).trim()
    for (let again = 0; again < 3 && ABOUT.test(label); again++) label = label.replace(ABOUT, '').trim()
    return label === '' || label.length > 40 ? [] : [{ label, rest: piece.slice(from).trim() }]
  })
}
