import { format } from 'numfmt'
import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Difference } from '../report.js'
import { seen } from './seen-difference.js'
import type { SeenCell, SheetLook } from './sheet-look.js'
import type { CellLook, FontLook } from './styles.js'

/** Number or text held by a cell as issued; undefined for other contents. */
export type IssuedContents = (sheet: string, row: number, column: number) => number | string | undefined

/** A font of another name may show other signs for the same letters. */
const otherFont = (issued: string | undefined, now: string | undefined): boolean =>
  issued !== undefined && now !== undefined && issued.toLowerCase() !== now.toLowerCase()

/**
 * What of a number format changes how a number looks, beside its digits: whatever stands in brackets (colours, conditions, languages,
 * digits of other scripts), signs that fill the cell, and blanks that push the number out of it.
 */
const MARKS = /\[[^[\]]{0,40}\]|\*.|(?:_.){3}/g

const formatMarks = (code: string): string =>
  (code.replace(/"[^"]*"|\\./g, '').match(MARKS) ?? []).join(' ').toLowerCase()

/** Cells that hold something and look otherwise than issued, in a way that changes what is read. */
export function compareCellLooks(issued: SheetLook, now: SheetLook, contents: IssuedContents): Difference[] {
  const differences: Difference[] = []
  const ofStyles = pairedStyles()
  for (const [key, cell] of issued.cells) {
    const found = now.cells.get(key)
    if (!found) continue
    if (!cell.filled || !found.filled) {
      differences.push(...ground(issued.name, cell, cell.look.fill, found.look.fill))
      continue
    }
    const value = contents(issued.name, cell.row, cell.column)
    for (const [label, a, b] of lookDifferences(cell, found, value, ofStyles)) {
      const place = withSheet(issued.name, addressOf(cell.row, cell.column))
      differences.push(seen('appearance', label, place, a, b))
    }
  }
  for (const [key, cell] of now.cells)
    if (!issued.cells.has(key)) differences.push(...ground(issued.name, cell, 'none', cell.look.fill))
  return differences
}

/** The ground of a cell that holds nothing: it may belong to the band of one that does. */
const ground = (sheet: string, { row, column }: SeenCell, issued: string, now: string): Difference[] =>
  issued === now
    ? []
    : [seen('appearance', 'background colour', withSheet(sheet, addressOf(row, column)), issued, now)]

type Pair = readonly [label: string, issued: string | number, now: string | number]

function lookDifferences(
  issued: SeenCell,
  now: SeenCell,
  value: number | string | undefined,
  ofStyles: Pairing,
): Pair[] {
  const [a, b] = [issued.look, now.look]
  const pairs: Pair[] = [...ofStyles(a, b)]
  if (value !== undefined && a.format !== b.format && shown(a.format, value) !== shown(b.format, value))
    pairs.push([
      typeof value === 'string' ? 'displayed text' : 'displayed number',
      shown(a.format, value),
      `${shown(b.format, value)} (number format ${b.format})`,
    ])
  else if (
    typeof value === 'number' &&
    a.format !== b.format &&
    shown(a.format, -value) !== shown(b.format, -value)
  )
    pairs.push([
      'a number of the other sign as displayed',
      shown(a.format, -value),
      `${shown(b.format, -value)} (number format ${b.format})`,
    ])
  // A text with line breaks is wrapped by some programs when they save it.
  if (a.wrapped !== b.wrapped && typeof value === 'string' && !(b.wrapped && value.includes('\n')))
    pairs.push(['text wrapped', yes(a.wrapped), yes(b.wrapped)])
  if (horizontal(a, value) !== horizontal(b, value))
    pairs.push(['alignment', horizontal(a, value), horizontal(b, value)])
  if (issued.formula !== now.formula) pairs.push(['type of formula', issued.formula, now.formula])
  if (now.reading !== issued.reading)
    pairs.push(['second text added to the cell', issued.reading, now.reading])
  if (issued.pieces.length + now.pieces.length > 0) pairs.push(...piecesDiffer(issued, now))
  return pairs
}

type Pairing = (a: CellLook, b: CellLook) => readonly Pair[]

/** What differs between two styles, whatever the cell holds. Few pairs of styles stand for very many cells. */
function pairedStyles(): Pairing {
  const known = new Map<CellLook, Map<CellLook, readonly Pair[]>>()
  return (a, b) => {
    const ofA = known.get(a) ?? new Map<CellLook, readonly Pair[]>()
    known.set(a, ofA)
    const before = ofA.get(b)
    if (before) return before
    const pairs = styleDifferences(a, b)
    ofA.set(b, pairs)
    return pairs
  }
}

function styleDifferences(a: CellLook, b: CellLook): Pair[] {
  if (a === b) return []
  const pairs: (Pair | false)[] = [
    ...fontDifferences(a.font, b.font),
    a.fill !== b.fill && ['background colour', a.fill, b.fill],
    formatMarks(a.format) !== formatMarks(b.format) && [
      'colour or fill of the number format',
      formatMarks(a.format) || 'none',
      formatMarks(b.format) || 'none',
    ],
    a.rotation !== b.rotation && ['text rotation', a.rotation, b.rotation],
    a.shrunk !== b.shrunk && ['shrunk to fit', yes(a.shrunk), yes(b.shrunk)],
    a.fromRight !== b.fromRight && ['read from right to left', yes(a.fromRight), yes(b.fromRight)],
    a.vertical !== b.vertical && ['vertical alignment', a.vertical, b.vertical],
    a.takenAsText !== b.takenAsText && ['taken as text', yes(a.takenAsText), yes(b.takenAsText)],
    a.heavyEdges !== b.heavyEdges && ['thick lines around the cell', a.heavyEdges, b.heavyEdges],
    a.formulaHidden !== b.formulaHidden && ['formula hidden', yes(a.formulaHidden), yes(b.formulaHidden)],
    a.crossed !== b.crossed && ['crossed out by a border', yes(a.crossed), yes(b.crossed)],
    Math.abs(a.indent - b.indent) > MOST_INDENT && ['indent', a.indent, b.indent],
  ]
  return pairs.filter((pair): pair is Pair => pair !== false)
}

/** Where a value stands in its cell; where nothing is stated, numbers to the right and texts to the left (ECMA-376 part 1, 18.18.40). */
const horizontal = (look: CellLook, value: number | string | undefined): string =>
  look.horizontal !== 'general' ? look.horizontal : typeof value === 'number' ? 'right' : 'left'

/** Programs shift an indent by one or two; far more pushes a text out of its cell. */
const MOST_INDENT = 2
const yes = (flag: boolean): string => (flag ? 'yes' : 'no')

function fontDifferences(a: FontLook, b: FontLook): (Pair | false)[] {
  return [
    a.colour !== b.colour && !(isBlack(a.colour) && isBlack(b.colour)) && ['text colour', a.colour, b.colour],
    a.size !== undefined &&
      !(Math.abs(a.size - (b.size ?? 0)) <= 0.06 * a.size) && [
        'text size, points',
        a.size,
        b.size ?? 'not stated',
      ],
    b.struck !== a.struck && ['struck through', yes(a.struck), yes(b.struck)],
    otherFont(a.name, b.name) && ['font', a.name ?? '', b.name ?? ''],
    a.bold !== b.bold && ['bold', yes(a.bold), yes(b.bold)],
    a.italic !== b.italic && ['italic', yes(a.italic), yes(b.italic)],
    a.underlined !== b.underlined && ['underlined', a.underlined, b.underlined],
    a.hollow !== b.hollow && ['outlined or shadowed letters', yes(a.hollow), yes(b.hollow)],
    a.symbols !== b.symbols && ['symbol font', yes(a.symbols), yes(b.symbols)],
    a.raised !== b.raised && ['superscript or subscript', a.raised, b.raised],
  ]
}

const isBlack = (colour: string): boolean => colour === 'auto' || colour === '000000'

/** Pieces of a text with a font of their own, against the font of the whole where the issued text has no pieces. */
function piecesDiffer(issued: SeenCell, now: SeenCell): Pair[] {
  const wanted = new Set([
    pieceKey(issued.look.font),
    ...issued.pieces.map((one) => pieceKey(one, issued.look)),
  ])
  const odd = now.pieces.map((one) => pieceKey(one, now.look)).filter((key) => !wanted.has(key))
  return odd.length > 0 ? [['format of part of the text', [...wanted].join('; '), odd.join('; ')]] : []
}

const pieceKey = (font: FontLook, { font: whole }: Partial<CellLook> = {}): string => {
  const colour = font.colour === 'auto' && whole ? whole.colour : font.colour
  const name = (font.name ?? whole?.name ?? '').toLowerCase()
  return `${isBlack(colour) ? '000000' : colour}, ${font.size ?? whole?.size ?? ''} points${name && `, ${name}`}${font.struck ? ', struck through' : ''}${font.raised === 'baseline' ? '' : `, ${font.raised}`}${
    font.hollow ? ', outlined or shadowed' : ''
  }${font.symbols ? ', symbol font' : ''}${lined(font, whole)}`
}

const lined = ({ underlined }: FontLook, whole: FontLook | undefined): string =>
  underlined === 'none' || underlined === whole?.underlined ? '' : `, underlined (${underlined})`

/** A number or text as a cell with this format shows it. */
export function shown(code: string, value: number | string): string {
  try {
    return format(code, value).trim()
  } catch {
    return `number format ${code}`
  }
}
