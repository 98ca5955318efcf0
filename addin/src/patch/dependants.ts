import type { Area } from '../host/address.js'
import { covers } from './change-cell.js'
import { referencesIn } from './references.js'
import type { CellElement, SheetElements } from './sheet-cells.js'

interface Formula {
  sheet: string
  cell: CellElement
  reads: readonly Area[] | 'unknown'
}

/**
 * Formula cells whose stored results are out of date once these cells have changed: those that read them, and those that read
 * these in turn. A formula whose cells are not plain is taken to read everything.
 */
export function dependants(
  sheets: ReadonlyMap<string, SheetElements>,
  changed: readonly { sheet: string; row: number; column: number }[],
): { sheet: string; cell: CellElement }[] {
  let open = [...sheets].flatMap(([sheet, { rows }]) =>
    rows.flatMap(({ cells }) =>
      cells.flatMap((cell): Formula[] =>
        cell.formula ? [{ sheet, cell, reads: readsOf(cell.formula) }] : [],
      ),
    ),
  )
  const found: Formula[] = []
  const waiting = [...changed]
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const at = next
    const isOut = (formula: Formula): boolean => reads(formula, at)
    const out = open.filter(isOut)
    if (out.length === 0) continue
    open = open.filter((formula) => !isOut(formula))
    found.push(...out)
    waiting.push(...out.map(({ sheet, cell: { row, column } }) => ({ sheet, row, column })))
  }
  return found.map(({ sheet, cell }) => ({ sheet, cell }))
}

/** Cells that share another's formula do not hold it themselves. */
function readsOf({ text, attributes }: NonNullable<CellElement['formula']>): Formula['reads'] {
  return text === '' || attributes.t !== undefined ? 'unknown' : referencesIn(text)
}

function reads(
  { sheet: own, reads: areas }: Formula,
  { sheet, row, column }: { sheet: string; row: number; column: number },
): boolean {
  if (areas === 'unknown') return true
  const here = { top: row, left: column, bottom: row, right: column }
  return areas.some((area) => (area.sheet ?? own).toLowerCase() === sheet.toLowerCase() && covers(area, here))
}
