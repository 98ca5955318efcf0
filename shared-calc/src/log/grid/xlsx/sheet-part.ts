import type { Attributes, XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import { addressOf, parseAddress, parseBlock, withSheet } from '../address.js'
import type { CellStore } from '../cell-store.js'
import { TextCollector } from './rich-text.js'
import { SharedFormulas } from './shared-formula.js'
import { type CellParts, cellOf, type SheetContext } from './stored-cell.js'

/** Reads one worksheet part into a store: cells, hidden rows and columns, merges. Everything else is skipped. */
export function sheetEvents(store: CellStore, context: SheetContext): XmlEvents {
  const collector = new TextCollector()
  const formulas = new SharedFormulas()
  /** Number of the group that the cell's formula is shared in. */
  let group: string | undefined
  let row = -1
  let column = -1
  let parts: CellParts | undefined
  let inside: 'v' | 'f' | 'is' | undefined

  /** Only an error needs to know the address: making it for every cell would cost more than reading the cell. */
  const address = () => withSheet(store.name, addressOf(row, column))

  function openCell(attributes: Attributes): void {
    const place = attributes.r === undefined ? { row, column: column + 1 } : parseAddress(attributes.r)
    if (!place || place.row !== row || place.column <= column || place.column >= LIMITS.columns)
      refuse('damaged-file', `sheet ${store.name}: the cell ${attributes.r ?? '(unnamed)'} is out of place`)
    column = place.column
    parts = { type: attributes.t ?? 'n', style: Number(attributes.s ?? 0) }
  }

  function closeCell(): void {
    if (!parts) return
    const cell = cellOf(parts, context, address)
    parts = undefined
    if (!cell) return
    if (++context.budget.cells > LIMITS.cells)
      refuse(
        'too-many-cells',
        `more than ${LIMITS.cells} cells are filled (reached at ${address()}): move other data out of the log`,
      )
    store.set(row, column, cell)
  }

  return {
    open(name, attributes) {
      if (inside === 'is') return collector.open(name, attributes)
      if (name === 'c') openCell(attributes)
      else if (name === 'v') inside = 'v'
      else if (name === 'f') {
        inside = 'f'
        if (parts) parts.formula = ''
        group = attributes.t === 'shared' ? attributes.si : undefined
      } else if (name === 'is') inside = 'is'
      else if (name === 'row') {
        row = openRow(store, attributes, row)
        column = -1
      } else if (name === 'col') openColumns(store, attributes)
      else if (name === 'mergeCell') openMerge(store, attributes)
      else if (name === 'dimension') guardDimension(store.name, attributes.ref ?? '')
    },
    text(text) {
      if (!parts || !inside) return
      if (inside === 'is') collector.text(text)
      else if (inside === 'v') parts.stored = (parts.stored ?? '') + text
      else parts.formula = (parts.formula ?? '') + text
    },
    close(name) {
      if (inside === 'is' && name !== 'is') return collector.close(name)
      if (name === 'f' && parts && group !== undefined)
        parts.formula = formulas.formulaAt(group, parts.formula ?? '', row, column)
      if (name === 'v' || name === 'f') inside = undefined
      else if (name === 'is') {
        inside = undefined
        if (parts) parts.inline = collector.take()
      } else if (name === 'c') closeCell()
    },
  }
}

function openRow(store: CellStore, attributes: Attributes, before: number): number {
  const row = attributes.r === undefined ? before + 1 : Number(attributes.r) - 1
  if (!Number.isInteger(row) || row <= before || row >= LIMITS.rows)
    refuse(
      'damaged-file',
      `sheet ${store.name}: the row number ${attributes.r ?? row + 1} is out of order or beyond the sheet`,
    )
  if (attributes.hidden === '1' || attributes.hidden === 'true') store.hideRow(row)
  return row
}

function openColumns(store: CellStore, attributes: Attributes): void {
  if (attributes.hidden !== '1' && attributes.hidden !== 'true') return
  store.hideColumns(Number(attributes.min) - 1, Number(attributes.max) - 1)
}

function openMerge(store: CellStore, attributes: Attributes): void {
  const block = parseBlock(attributes.ref ?? '')
  if (!block)
    refuse('damaged-file', `sheet ${store.name}: the merged block ${attributes.ref ?? ''} is not valid`)
  store.merge(block)
}

/** A sheet that claims millions of cells is not a log; a spreadsheet program would fill the memory with it. */
function guardDimension(sheet: string, ref: string): void {
  const block = parseBlock(ref)
  if (!block) return
  const cells = (block.bottom - block.top + 1) * (block.right - block.left + 1)
  if (cells > LIMITS.dimensionCells)
    refuse(
      'sheet-too-wide',
      `sheet ${sheet} says it uses ${ref}; at most ${LIMITS.dimensionCells} cells are accepted: delete the empty formatted rows and columns and save again`,
    )
}
