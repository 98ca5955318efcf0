import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { Segment } from './columns.js'
import type { TableRow } from './table-row.js'

/**
 * "1 | 2 | … | 8 | at 50 Pa" in front of the readings: a row that has a name where all others are numbered may be a result that was worked
 * out of them.
 */
export function withOddLabels({ view, columns, left }: Segment, rows: readonly TableRow[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const numbering = [left - 1, ...columns.filter(({ role }) => OF_ROWS.includes(role)).map(({ at }) => at)]
  const odd = new Map<TableRow, string>()
  for (const column of numbering) {
    const leads = readings.map(({ row }) => view.text(row, column) ?? view.number(row, column)?.toString())
    const numbered = leads.filter((lead) => lead !== undefined && NUMBERED.test(lead.trim()))
    const named = leads.flatMap((lead, index) =>
      lead !== undefined && /\p{L}{3}/u.test(lead) && !NUMBERED.test(lead.trim()) ? [{ lead, index }] : [],
    )
    if (numbered.length < FEWEST_NUMBERED || numbered.length + named.length < readings.length) continue
    for (const { lead, index } of named.length <= 2 ? named : []) odd.set(readings[index] as TableRow, lead)
  }
  return rows.map((row) => {
    const lead = odd.get(row)
    return lead === undefined || row.doubt
      ? row
      : { ...row, doubt: { kind: 'remark', why: rowReasons.rowSays(lead) } }
  })
}

const OF_ROWS: readonly string[] = ['index', 'other', 'remark', 'speed']
const FEWEST_NUMBERED = 3
/** "1", "P1", "Step 3", "4b": one of a row of readings. */
const NUMBERED = /^(?:\p{L}{1,12}\.?\s?)?\d{1,2}[a-z]?[.)]?$/u
