import { bareUnit, unitOfHeadings } from '../cells/stated-unit.js'
import type { KnownUnit, QuantityKind } from '../cells/units.js'
import type { Block } from '../grid/address.js'
import type { Cell, Sheet } from '../grid/grid.js'
import { textOf } from './scope.js'

/** Headings stand so far from what they head: up to four rows above, up to three cells to the left. */
const REACH = { above: 4, left: 3 }

/** The unit that is stated around cells which are named by their address: over a column, left of a line, beside one cell. */
export function unitNear(sheet: Sheet, block: Block, kind: QuantityKind): KnownUnit | undefined {
  const above = () => unitOfHeadings(textsTowards(sheet, block, { row: -1, column: 0 }, REACH.above), kind)
  if (block.bottom > block.top) return above()
  const right = textOf(sheet.at(block.top, block.right + 1))
  const beside = right === undefined ? undefined : bareUnit(right)
  if (beside?.kind === kind) return beside
  const left = textsTowards(sheet, block, { row: 0, column: -1 }, REACH.left)
  // A bare unit left of one cell belongs to the value in front of it.
  const own = block.right > block.left ? left : left.filter((text) => !bareUnit(text))
  return unitOfHeadings(own, kind) ?? above()
}

/** Texts from a block upwards or to the left, the farthest first, up to the first cell that holds something else. */
function textsTowards(
  sheet: Sheet,
  { top, left }: Block,
  step: { row: number; column: number },
  reach: number,
): string[] {
  const texts: string[] = []
  for (let far = 1; far <= reach; far++) {
    const [row, column] = [top + far * step.row, left + far * step.column]
    const cell = row < 0 || column < 0 ? undefined : shownAt(sheet, row, column)
    if (!cell) continue
    if (cell.kind !== 'text') break
    texts.unshift(String(cell.value))
  }
  return texts
}

/** The cell, or that of the merged block over it. */
function shownAt(sheet: Sheet, row: number, column: number): Cell | undefined {
  const own = sheet.at(row, column)
  const merged = own ? undefined : sheet.mergeAt(row, column)
  return merged ? sheet.at(merged.top, merged.left) : own
}
