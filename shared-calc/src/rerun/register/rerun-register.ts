import { bytesToHex } from '@noble/hashes/utils.js'
import { monthFromWords } from '../../catalogue/words.js'
import { parseAddress } from '../../log/grid/address.js'
import type { Grid, Sheet } from '../../log/grid/grid.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import { AS_OF, columns, FIRST_ROW, REGISTER_SHEET } from '../../reports/register/workbook/columns.js'
import { type ColumnPlaces, dateIn, quotedIn } from '../../reports/register/workbook/quoted.js'
import { archiveDifferences } from '../archive-shape.js'
import type { QuotedRow, RegisterRead, RerunTest } from '../report.js'
import { formulasOfHead, formulasOfRows } from './formulas-of-rows.js'
import { looksOfRegister } from './looks-of-register.js'
import { totalsOfRegister } from './totals-of-register.js'

/**
 * Reads a register for a re-run: its rows, to be compared with the tests they name once all files are read, and what its
 * formulas and totals show by themselves.
 */
export function rerunRegister(file: string, grid: Grid, bytes: Uint8Array): RerunTest {
  const sheet = grid.sheet(REGISTER_SHEET)
  const places = sheet && placesOf(sheet)
  const about = { file, kind: 'register' as const, sinceIssue: [], notes: [] }
  if (!sheet || !places)
    return {
      ...about,
      outcome: 'cannot be read',
      why: `the headings of sheet ${REGISTER_SHEET} are not those of a register of this version`,
      compared: { figures: 0, cells: 0 },
      differences: [],
    }
  const rows = rowsOf(sheet, places)
  const formulas = formulasOfRows(sheet, rows, places)
  const totals = totalsOfRegister(grid, rows, places)
  const head = formulasOfHead(sheet, rows.length)
  const looks = looksOfRegister(archivedParts(bytes), grid)
  return {
    ...about,
    outcome: 'agrees',
    why: '',
    compared: { figures: 0, cells: formulas.cells + totals.cells + head.cells },
    differences: [
      ...formulas.differences,
      ...totals.differences,
      ...head.differences,
      ...looks.differences,
      ...archiveDifferences(bytes),
    ],
    notes: looks.notes,
    register: { rows, places, ...scopeOf(sheet) },
    bytes: bytesToHex(bytes),
  }
}

/** Where the columns stand, by their headings; undefined where one is missing. */
function placesOf(sheet: Sheet): ColumnPlaces | undefined {
  const heads = new Map<string, number>()
  for (let column = 0; column < sheet.columns; column += 1)
    heads.set(plain(String(sheet.at(FIRST_ROW - 2, column)?.value ?? '')), column)
  const found = columns.flatMap(({ key, head }): [string, number][] => {
    const column = heads.get(plain(head))
    return column === undefined ? [] : [[key, column]]
  })
  return found.length === columns.length ? Object.fromEntries(found) : undefined
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim()

function rowsOf(sheet: Sheet, places: ColumnPlaces): QuotedRow[] {
  const rows: QuotedRow[] = []
  for (let row = FIRST_ROW - 1; row < sheet.rows; row += 1) {
    const { file, role, counts, billed, retest, ...shown } = quotedIn(sheet, row, places)
    if (file === undefined && Object.keys(shown).length === 0) continue
    rows.push({
      row,
      file: String(file ?? ''),
      role: String(role ?? ''),
      counts: counts === 'yes',
      billed: billed === 'yes',
      retest: retest === 'yes',
      shown,
    })
  }
  return rows
}

/** The month and client that a register's title names, and its date. */
function scopeOf(sheet: Sheet): Pick<RegisterRead, 'month' | 'client' | 'asOf'> {
  const title = String(sheet.at(0, 0)?.value ?? '')
  const [, named = '', rest] = /^[^,]*(?:, ([^,]+))?(?:, (.+))?$/.exec(title) ?? []
  // Registers written before 1.5.0 name the month as 2026-10.
  const month = /^\d{4}-\d{2}$/.test(named) ? named : monthFromWords(named)
  const client = month === undefined ? [named, rest].filter(Boolean).join(', ') || undefined : rest
  const at = parseAddress(AS_OF)
  const asOf = at && dateIn(sheet.at(at.row, at.column)?.value)
  return {
    ...(month !== undefined && { month }),
    ...(client !== undefined && { client }),
    ...(asOf !== undefined && { asOf }),
  }
}
