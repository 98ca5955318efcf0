import { cellText } from '../../catalogue/findings/log/cells.js'
import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Direction } from '../../contract/record/index.js'
import type { Collector } from '../collector.js'
import { unitOfRun } from './list-unit.js'
import { findList } from './lists.js'
import { lookAlong, settle } from './look.js'
import { isPlaceholder, isWord, withoutNumber } from './row-usable.js'
import type { Layout, RunLayout } from './schema.js'
import type { Scope } from './scope.js'

/** Zero-flow pressure differences of one list, Pa, in the order of the log; struck-through values and placeholders left out. */
export function readZeroFlow(
  scope: Scope,
  layout: Layout,
  run: RunLayout,
  which: 'zeroFlowBefore' | 'zeroFlowAfter',
  direction: Direction,
  collector: Collector,
  path: string,
): number[] | undefined {
  const given = run[which]
  if (!given) return undefined
  const column = 'at' in given ? given : given[direction]
  const list = findList(scope, column.at, path, true)
  const at = lookAlong(scope, layout, list, path, {
    unit: column.unit,
    otherwise: () => unitOfRun(scope, run, path),
  })
  const values: number[] = []
  for (let index = 0; ; index++) {
    const place = list.place(index)
    if (!place) break
    const looked = at(place.row, place.column)
    if (looked.state === 'blank') {
      if (list.open) break
      collector.tell(cellText('log-blank', { what: 'cell' }), looked.address, path)
      continue
    }
    // Below open-ended values the next label ends them.
    if (list.open && looked.state === 'refused' && looked.code === 'not-a-number' && !isPlaceholder(looked))
      break
    if (
      looked.state === 'refused' &&
      (looked.code === 'error-value' || isPlaceholder(looked) || isWord(looked))
    ) {
      collector.tell(withoutNumber(looked, 'zero-flow pressure'), looked.address, path)
      continue
    }
    if (looked.state === 'struck') {
      collector.tell(cellText('log-struck-through', { what: 'zero-flow pressure' }), looked.address, path)
      continue
    }
    const value = settle(looked, collector, `${path}[${values.length}]`)
    if (typeof value === 'number') values.push(turned(value, run, looked.address, path, collector))
  }
  return values
}

export function turned(
  value: number,
  run: RunLayout,
  cell: string,
  path: string,
  collector: Collector,
): number {
  if (run.sign?.zeroFlow !== 'outside minus inside') return value
  collector.tell(tableText('log-sign'), cell, path)
  return value === 0 ? 0 : -value
}
