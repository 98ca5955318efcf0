import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import type { Finding } from '../../../contract/record/index.js'
import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import { addressOf, withSheet } from '../address.js'
import type { Cell, Grid, Sheet } from '../grid.js'
import { addProofs, noProofs, provenDecimal } from './decimal-proofs.js'
import { decodeText } from './decode.js'
import { findSeparator } from './dialect.js'
import { splitFields } from './split-fields.js'

const SIGNS = { '.': 'point', ',': 'comma' } as const

/**
 * Opens a separated-values file as a grid of one sheet named after the file. Fields stay text unless they are plain
 * numbers under the decimal sign the layout states or the whole file proves.
 * @throws LogError `unreadable-text`, `damaged-file`, `too-many-cells`
 */
export function openText(bytes: Uint8Array, fileName: string, stated?: '.' | ','): Grid {
  if (bytes.length > LIMITS.textBytes)
    refuse(
      'too-large',
      `the text file is larger than ${LIMITS.textBytes / 1024 / 1024} MB, the most that is read`,
    )
  const { text, findings } = decodeText(bytes)
  const name = fileName.replace(/^.*[\\/]/, '').replace(/\.[^.]*$/, '') || 'text'
  const rows = split(text.replace(/^\ufeff/, ''), name)
  const proof = stated ? undefined : provenDecimal(proofsIn(rows, name))
  const decimal = stated ?? proof?.sign
  const sheet = textSheet(name, rows, decimal)
  return {
    kind: 'text',
    fileName,
    sheetNames: [name],
    sheet: (wanted) => (wanted.toLowerCase() === name.toLowerCase() ? sheet : undefined),
    names: [],
    date1904: false,
    ...(decimal ? { decimal } : {}),
    findings: [...findings, ...(proof ? [decimalFound(proof)] : [])],
  }
}

function proofsIn(rows: readonly (readonly string[])[], sheet: string) {
  const proofs = noProofs()
  for (const [row, fields] of rows.entries()) addProofs(proofs, row, fields, sheet)
  return proofs
}

const decimalFound = ({ sign, cell }: { sign: '.' | ','; cell: string }): Finding =>
  remarkFinding(fileText('log-decimal', { sign: SIGNS[sign], cell }), [cell])

function split(text: string, sheet: string): string[][] {
  const separator = findSeparator(text)
  const body = text.replace(/^sep=[\t;|,]\r?\n/, (line) => line.replace(/sep=./, ''))
  guardFields(body, separator ?? '')
  const { rows, fault } = splitFields(body, separator ?? '')
  if (fault)
    refuse('damaged-file', QUOTE_FAULTS[fault.kind], {
      cell: withSheet(sheet, addressOf(fault.row, fault.column)),
    })
  return rows
}

const QUOTE_FAULTS = {
  open: 'a quotation mark is not closed: the rest of the file would be one field',
  after: 'more text follows the closing quotation mark: write a quotation mark inside a quoted field twice',
}

/** Counts fields before they are made: a file of separators alone would fill the memory. */
function guardFields(text: string, separator: string): void {
  const lineEnd = text.includes('\n') ? '\n' : '\r'
  let fields = 1
  for (let at = 0; at < text.length; at++) {
    const letter = text[at]
    if (letter === lineEnd || letter === separator) fields++
  }
  if (fields > LIMITS.textCells)
    refuse('too-many-cells', `the file holds about ${fields} fields; at most ${LIMITS.textCells} are read`)
}

function textSheet(
  name: string,
  rows: readonly (readonly string[])[],
  decimal: '.' | ',' | undefined,
): Sheet {
  const plain = decimal === ',' ? /^[+-]?\d+(,\d+)?$/ : /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/
  return {
    name,
    hidden: false,
    rows: rows.length,
    columns: rows.reduce((most, row) => Math.max(most, row.length), 0),
    at(row, column): Cell | undefined {
      const field = rows[row]?.[column]?.trim()
      if (!field) return undefined
      // Without a proven sign only whole numbers are beyond doubt.
      if (plain.test(field) && (decimal || /^[+-]?\d+$/.test(field)))
        return { kind: 'number', value: Number(field.replace(',', '.')) }
      return { kind: 'text', value: field }
    },
    isRowHidden: () => false,
    isColumnHidden: () => false,
    mergeAt: () => undefined,
  }
}
