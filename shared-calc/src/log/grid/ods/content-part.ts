import type { Attributes, XmlEvents } from '../../container/xml.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import { parseBlock } from '../address.js'
import { CellStore } from '../cell-store.js'
import type { DefinedName } from '../grid.js'
import { Rows } from './rows.js'
import { type Styles, styleEvents } from './styles.js'

export interface Content {
  sheets: CellStore[]
  names: DefinedName[]
}

const TABLE = 'urn:oasis:names:tc:opendocument:xmlns:table:1.0'
const OFFICE = 'urn:oasis:names:tc:opendocument:xmlns:office:1.0'

/**
 * Reads content.xml: unnamed styles, then one table after the other. Tables inside tables, copies of other files' cells,
 * changes kept for review, notes and drawings are skipped.
 */
export function contentEvents(content: Content, styles: Styles): XmlEvents {
  const style = styleEvents(styles)
  const budget = { cells: 0 }
  let part: 'styles' | 'sheets' | undefined
  let rows: Rows | undefined
  /** Depth inside something that is skipped. */
  let passed = 0

  function openSheet(attributes: Attributes): void {
    if (content.sheets.length >= LIMITS.sheets)
      refuse('too-many-sheets', `the spreadsheet has more than ${LIMITS.sheets} sheets: split it`)
    const hidden = styles.isTableHidden(attributes['table:style-name'] ?? '')
    const store = new CellStore(attributes['table:name'] ?? '', hidden)
    content.sheets.push(store)
    rows = new Rows(store, styles, budget)
  }

  return {
    open(name, attributes) {
      if (name === 'document-content') guardNames(attributes)
      else if (passed > 0) passed++
      else if (part === 'styles') style.open(name, attributes)
      else if (name === 'automatic-styles') part = 'styles'
      else if (name === 'spreadsheet') part = 'sheets'
      else if (part !== 'sheets') return
      else if (rows?.inCell) rows.openInCell(name, attributes)
      else if (name === 'table' && !rows) openSheet(attributes)
      else if (name === 'table-source' && rows) {
        // Cells of another file, kept in case it is not at hand.
        content.sheets.pop()
        rows.leave()
        passed = 1
      } else if (PASSED_OVER.has(name) || name === 'table') passed = 1
      else if (rows) rows.open(name, attributes)
      else if (name === 'named-range') {
        const named = namedBlock(attributes)
        if (content.names.length >= LIMITS.names)
          refuse('too-many-cells', `the spreadsheet defines more than ${LIMITS.names} names`)
        if (named) content.names.push(named)
      }
    },
    text(text) {
      if (passed > 0) return
      if (part === 'styles') style.text(text)
      else rows?.text(text)
    },
    close(name) {
      if (passed > 0) passed--
      else if (part === 'styles') {
        if (name === 'automatic-styles') part = undefined
        else style.close(name)
      } else if (rows?.inCell) rows.closeInCell(name)
      else if (name === 'table') rows = undefined
      else rows?.close(name)
    },
  }
}

const PASSED_OVER = new Set(['tracked-changes', 'shapes', 'forms', 'dde-links', 'content-validations'])

/** Writers agree on the names before the colons; a file with others would look empty, so it is refused. */
function guardNames(attributes: Attributes): void {
  if (attributes['xmlns:table'] !== TABLE || attributes['xmlns:office'] !== OFFICE)
    refuse('damaged-file', 'the part content.xml is not in the OpenDocument spreadsheet format')
}

/** A name for cells, written as `$'Test log'.$B$4:.$C$9`; undefined where it stands for anything else. */
function namedBlock(attributes: Attributes): DefinedName | undefined {
  const text = attributes['table:cell-range-address'] ?? ''
  const match =
    /^\$?(?:'((?:[^']|'')+)'|([^'.]+))\.(\$?[A-Z]+\$?\d+)(?::(?:[^:]*\.)?(\$?[A-Z]+\$?\d+))?$/.exec(text)
  if (!match) return undefined
  const [, quoted, plain = '', first, last] = match
  const block = parseBlock(last === undefined ? `${first}` : `${first}:${last}`)
  const sheet = quoted?.replaceAll("''", "'") ?? plain
  return block && { name: attributes['table:name'] ?? '', sheet, block }
}
