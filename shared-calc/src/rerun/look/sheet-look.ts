import { addressOf, columnLetters, type Place, parseAddress, parseBlock } from '../../log/grid/address.js'
import { comparableFormula } from '../formula-text.js'
import { type DrawnObject, drawnObjects } from './drawing-look.js'
import type { Package, SheetPart } from './package.js'
import { pageOf } from './page-look.js'
import { type CellLook, type ConditionLook, type FontLook, fontOf, type Styles } from './styles.js'
import { unusualInExtensions, unusualInSheet } from './usual-elements.js'
import { attr, child, children, deep, isOn, textOf, type XmlNode } from './xml-tree.js'

/** A cell of the sheet: its look, and the fonts of pieces of its text where they have their own. */
export interface SeenCell {
  readonly row: number
  readonly column: number
  readonly look: CellLook
  readonly filled: boolean
  readonly pieces: readonly FontLook[]
  /** `usual`, or how it reaches over further cells (ECMA-376 part 1, 18.18.6). */
  readonly formula: string
  /** A phonetic reading, which is shown above the text. */
  readonly reading: string
}

export interface SeenCondition {
  readonly area: string
  readonly rule: string
  readonly look: ConditionLook
}

/** What a person sees of a sheet, on the screen and on paper, beside the contents of its cells. */
export interface SheetLook {
  readonly name: string
  readonly state: string
  /** By place: see `placeKey`. */
  readonly cells: ReadonlyMap<number, SeenCell>
  /** Points; by row, counted from 0. */
  readonly height: (row: number) => number
  /** Characters; by column, counted from 0. */
  readonly width: (column: number) => number
  /** Rows and columns whose size the file gives; others are as high and wide as the program likes. */
  readonly stated: { readonly rows: ReadonlySet<number>; readonly columns: (column: number) => boolean }
  readonly merges: ReadonlySet<string>
  readonly conditions: readonly SeenCondition[]
  readonly objects: readonly DrawnObject[]
  readonly comments: readonly string[]
  readonly gridLines: boolean
  /** Points of the font that widths of columns are counted in. */
  readonly usualSize: number
  /** Page set-up in words → value. */
  readonly page: ReadonlyMap<string, string>
  /** Other things of a sheet in words → value. */
  readonly others: ReadonlyMap<string, string>
}

/** Heights and widths where nothing is stated, as the standard has them. */
const DEFAULT = { height: 15, width: 8.43 }

export function readSheet(
  from: Package,
  part: SheetPart,
  styles: Styles,
  texts: readonly XmlNode[],
): SheetLook {
  const tree = from.tree(part.path)
  const format = child(tree, 'sheetFormatPr')
  const rows = children(child(tree, 'sheetData'), 'row')
  const odd = new Set<string>()
  return {
    name: part.name,
    state: part.state,
    cells: cellsOf(rows, styles, texts, odd),
    height: heights(rows, format),
    width: widths(tree, format),
    stated: statedSizes(rows, tree),
    merges: new Set(children(child(tree, 'mergeCells'), 'mergeCell').map((one) => attr(one, 'ref') ?? '')),
    conditions: conditionsOf(tree, styles),
    objects: drawnObjects(from, part.path, child(tree, 'drawing')),
    comments: commentsOf(from, part.path),
    page: pageOf(tree),
    others: new Map([
      ...othersOf(from, part.path, tree),
      ['cells written in an unusual way', [...odd].slice(0, MOST_NAMED).join(', ') || 'none'],
    ]),
    gridLines: isOn(attr(child(child(tree, 'sheetViews'), 'sheetView'), 'showGridLines'), true),
    usualSize: styles.usualSize,
  }
}

/** How many odd cells are named. */
const MOST_NAMED = 5

function cellsOf(
  rows: readonly XmlNode[],
  styles: Styles,
  texts: readonly XmlNode[],
  odd: Set<string>,
): Map<number, SeenCell> {
  const cells = new Map<number, SeenCell>()
  const [plain] = styles.cells
  let before = -1
  for (const line of rows) {
    const number = Number(attr(line, 'r') ?? before + 2) - 1
    before = number
    let last = -1
    for (const cell of children(line, 'c')) {
      // A cell that states no place stands beside the one before it (ECMA-376 part 1, 18.3.1.4).
      const place = placeOf(attr(cell, 'r'), number, last + 1)
      last = place.column
      const look = styles.cells[Number(attr(cell, 's') ?? 0)] ?? plain
      if (!look) continue
      const text = attr(cell, 't') === 's' ? texts[Number(child(cell, 'v')?.text)] : child(cell, 'is')
      const pieces = piecesOf(text, styles)
      const filled = cell.children.length > 0
      const formula = formulaKind(child(cell, 'f'))
      const reading =
        text === undefined || !has(text, 'rPh') ? '' : children(text, 'rPh').map(textOf).join(' ')
      const key = placeKey(place.row, place.column)
      if (isOdd(cell, text) || cells.has(key)) odd.add(addressOf(place.row, place.column))
      const { row, column } = place
      cells.set(key, { row, column, look, filled, pieces, formula, reading })
    }
  }
  return cells
}

const has = (node: XmlNode, name: string): boolean => node.children.some((one) => one.name === name)

/** What a cell may say of itself (ECMA-376 part 1, 18.3.1.4), without the numbers of metadata: those may show something else in its place. */
const OF_CELL = new Set(['r', 's', 't', 'ph'])

/** Whether a cell holds two values, two formulas or two texts, of which a program may show the one or the other, or something beside them. */
function isOdd(cell: XmlNode, text: XmlNode | undefined): boolean {
  for (const key in cell.attributes) if (!OF_CELL.has(key) && !key.startsWith('xml')) return true
  const { children: held } = cell
  // Names differ in all cells but those that are odd, so two of one name are looked for only where there are two.
  if (held.length > 2 || (held.length === 2 && held[0]?.name === held[1]?.name)) return true
  for (const { name } of held) if (!(name === 'v' || name === 'f' || name === 'is')) return true
  if (text === undefined || text.children.length < 2) return false
  return text.children.filter(({ name }) => name === 't').length > 1
}

const everyElement = (node: XmlNode): XmlNode[] => [node, ...node.children.flatMap(everyElement)]

const NO_PIECES: readonly FontLook[] = []

/** Fonts of the pieces of a text; most texts are of one piece, and have none of their own. */
function piecesOf(text: XmlNode | undefined, { theme }: Styles): readonly FontLook[] {
  if (text === undefined || !has(text, 'r')) return NO_PIECES
  return children(text, 'r').flatMap((run) => {
    const font = child(run, 'rPr')
    return font ? [fontOf(font, theme)] : []
  })
}

/** A formula of one cell, or shared by several, gives each of them its own result: that is the usual. */
function formulaKind(formula: XmlNode | undefined): string {
  const kind = attr(formula, 't') ?? 'normal'
  if (kind === 'normal' || kind === 'shared') return 'usual'
  // An area of one cell is written K5:K5 by one program and K5 by another.
  const [from, to] = (attr(formula, 'ref') ?? 'one cell').split(':')
  return `${kind} over ${to === undefined || to === from ? from : `${from}:${to}`}`
}

/** One number for a row and a column, counted from 0. A sheet has at most 16,384 columns. */
const placeKey = (row: number, column: number): number => row * 16_384 + column

const placeOf = (address: string | undefined, row: number, column: number): Place =>
  (address === undefined ? undefined : parseAddress(address)) ?? { row, column }

function heights(rows: readonly XmlNode[], format: XmlNode | undefined): (row: number) => number {
  const usual = isOn(attr(format, 'zeroHeight'))
    ? 0
    : Number(attr(format, 'defaultRowHeight') ?? DEFAULT.height)
  const own = new Map(
    rows.map((row) => {
      const height = isOn(attr(row, 'hidden')) ? 0 : Number(attr(row, 'ht') ?? usual)
      return [Number(attr(row, 'r') ?? 0) - 1, height]
    }),
  )
  return (row) => own.get(row) ?? usual
}

function widths(tree: XmlNode | undefined, format: XmlNode | undefined): (column: number) => number {
  const base = attr(format, 'baseColWidth')
  // Beside its characters a column has a margin (ECMA-376 part 1, 18.3.1.81).
  const usual = Number(
    attr(format, 'defaultColWidth') ?? (base === undefined ? DEFAULT.width : Number(base) + 0.43),
  )
  const own = children(child(tree, 'cols'), 'col').map((col) => ({
    from: Number(attr(col, 'min') ?? 1) - 1,
    to: Number(attr(col, 'max') ?? 1) - 1,
    width: isOn(attr(col, 'hidden')) ? 0 : Number(attr(col, 'width') ?? usual),
  }))
  return (column) => own.find(({ from, to }) => column >= from && column <= to)?.width ?? usual
}

/** Columns that two widths are stated for: programs may take the first, the last, or neither. */
function columnsTwice(tree: XmlNode | undefined): string {
  const ranges = children(child(tree, 'cols'), 'col')
    .map((col) => [Number(attr(col, 'min') ?? 1), Number(attr(col, 'max') ?? 1)] as const)
    .sort(([a], [b]) => a - b)
  const twice = ranges.flatMap(([from], i) => (i > 0 && from <= (ranges[i - 1]?.[1] ?? 0) ? [from - 1] : []))
  return twice.map(columnLetters).join(', ') || 'none'
}

function statedSizes(rows: readonly XmlNode[], tree: XmlNode | undefined): SheetLook['stated'] {
  const columns = children(child(tree, 'cols'), 'col')
    .filter((col) => isOn(attr(col, 'customWidth')))
    .map((col) => [Number(attr(col, 'min') ?? 1) - 1, Number(attr(col, 'max') ?? 1) - 1] as const)
  return {
    rows: new Set(
      rows.filter((row) => isOn(attr(row, 'customHeight'))).map((row) => Number(attr(row, 'r') ?? 0) - 1),
    ),
    columns: (column) => columns.some(([from, to]) => column >= from && column <= to),
  }
}

/** Rules in the order in which they are applied; new programs keep some of theirs in an extension. */
function conditionsOf(tree: XmlNode | undefined, styles: Styles): SeenCondition[] {
  const blocks = [
    ...children(tree, 'conditionalFormatting'),
    ...deep(child(tree, 'extLst'), 'conditionalFormatting'),
  ]
  return blocks.flatMap((block) =>
    children(block, 'cfRule')
      .map((rule, order) => ({ rule, order, priority: Number(attr(rule, 'priority') ?? 0) }))
      .sort((a, b) => a.priority - b.priority || a.order - b.order)
      .map(({ rule }) => ({
        area: (attr(block, 'sqref') ?? child(block, 'sqref')?.text ?? '').split(' ').sort().join(' '),
        rule: [
          attr(rule, 'type') ?? '',
          attr(rule, 'operator') ?? '',
          ...[...children(rule, 'formula'), ...children(rule, 'f')].map(({ text }) =>
            comparableFormula(text),
          ),
        ].join(' '),
        look: styles.conditions[Number(attr(rule, 'dxfId') ?? -1)] ?? {},
      })),
  )
}

/** Comments, old and new ones, each with its cell. */
function commentsOf(from: Package, path: string): string[] {
  return [...from.links(path).values()]
    .filter(({ type, external }) => /comment/i.test(type) && !external)
    .flatMap(({ target }) => {
      const tree = from.tree(target)
      // Newer comments are of an extension's namespace and keep a prefix.
      return (tree ? everyElement(tree) : [])
        .filter(({ name }) => /(^|:)(comment|threadedComment)$/.test(name))
        .map((one) => attr(one, 'ref') ?? '')
    })
}

/** Kinds of parts a sheet may lead to that no summary has. */
const FOREIGN = /^(oleObject|control|ctrlProp|table|pivotTable|queryTable|image|vmlDrawing|slicer|activeX)/

function othersOf(from: Package, path: string, tree: XmlNode | undefined): Map<string, string> {
  const views = deep(child(tree, 'sheetViews'), 'sheetView')
  const [view] = views
  const settings = child(tree, 'sheetPr')
  const links = from.links(path)
  const foreign = [...links.values()].filter(({ type }) => FOREIGN.test(type)).map(({ type }) => type)
  const filter = child(tree, 'autoFilter')
  const protection = child(tree, 'sheetProtection')
  const extensions = child(tree, 'extLst')
  return new Map([
    ...frozenOf(view),
    ['sparklines', String(deep(extensions, 'sparkline').length)],
    ['ranges that can be edited', String(deep(tree, 'protectedRange').length)],
    [
      'formulas shown instead of results',
      views.some((one) => isOn(attr(one, 'showFormulas'))) ? 'yes' : 'no',
    ],
    ['zeros shown', views.every((one) => isOn(attr(one, 'showZeros'), true)) ? 'yes' : 'no'],
    ['columns from right to left', views.some((one) => isOn(attr(one, 'rightToLeft'))) ? 'yes' : 'no'],
    ['zoom', views.every((one) => isZoom(attr(one, 'zoomScale'))) ? 'normal' : 'outside the usual limits'],
    [
      'conditional formats in use',
      isOn(attr(settings, 'enableFormatConditionsCalculation'), true) ? 'yes' : 'no',
    ],
    ['formulas calculated by older rules', isOn(attr(settings, 'transitionEvaluation')) ? 'yes' : 'no'],
    ['protected', isOn(attr(protection, 'sheet')) ? 'yes' : 'no'],
    [
      'filter',
      filter ? `${attr(filter, 'ref')}${deep(filter, 'filterColumn').length > 0 ? ', in use' : ''}` : 'none',
    ],
    ['links', linksOf(tree, links)],
    ['data validation', validationsOf(tree)],
    [
      'embedded objects',
      foreign.filter((type) => !(type === 'vmlDrawing' || type === 'image')).join(', ') || 'none',
    ],
    ['other contents of the sheet', unusualInSheet(tree)],
    ['contents of extensions', unusualInExtensions(extensions)],
    ['columns whose width is stated twice', columnsTwice(tree)],
    ['colour of its tab', tabColour(child(settings, 'tabColor'))],
    ['background picture', child(tree, 'picture') ? 'yes' : 'no'],
  ])
}

const tabColour = (colour: XmlNode | undefined): string =>
  colour ? Object.entries(colour.attributes).flat().join(' ') : 'none'

/** Per cent that a sheet can be shown at (ECMA-376 part 1, 18.3.1.87). */
const isZoom = (zoom: string | undefined): boolean =>
  zoom === undefined || (Number(zoom) >= 10 && Number(zoom) <= 400)

/** Frozen rows and columns, and the first cell that can be reached: what lies above or before it cannot. */
function frozenOf(view: XmlNode | undefined): [string, string][] {
  const pane = child(view, 'pane')
  const frozen = (attr(pane, 'state') ?? '').startsWith('frozen')
  return [
    [
      'frozen',
      frozen
        ? `${Number(attr(pane, 'ySplit') ?? 0)} rows, ${Number(attr(pane, 'xSplit') ?? 0)} columns`
        : 'nothing',
    ],
    ['first cell in view', frozen ? (attr(view, 'topLeftCell') ?? 'A1') : 'A1'],
  ]
}

const linksOf = (tree: XmlNode | undefined, links: ReturnType<Package['links']>): string =>
  children(child(tree, 'hyperlinks'), 'hyperlink')
    .map((one) => {
      const target = links.get(attr(one, 'id') ?? '')?.target ?? ''
      const tip = attr(one, 'tooltip')
      const [address = '', inside = attr(one, 'location') ?? ''] = target.split('#')
      return `${attr(one, 'ref')} → ${address}${inside && `#${inside.replace(/['$]/g, '')}`}${tip ? ` (${tip})` : ''}`
    })
    .sort()
    .join('; ') || 'none'

const validationsOf = (tree: XmlNode | undefined): string =>
  deep(tree, 'dataValidation')
    .map((one) => {
      const formulas = one.children.map(({ text }) => comparableFormula(text))
      const texts = ['promptTitle', 'prompt', 'errorTitle', 'error'].map((name) => attr(one, name))
      const message = texts.filter(Boolean).join(' ')
      return [attr(one, 'sqref') ?? child(one, 'sqref')?.text, attr(one, 'type'), ...formulas, message]
        .join(' ')
        .trim()
    })
    .sort()
    .join('; ') || 'none'

/** Whether an area of merged cells, such as B4:C5, covers a cell beside its first. */
export function covers(merge: string, row: number, column: number): boolean {
  const block = parseBlock(merge)
  if (!block) return false
  const inside = row >= block.top && row <= block.bottom && column >= block.left && column <= block.right
  return inside && !(row === block.top && column === block.left)
}
