import { readLabel, says } from '../words/label.js'
import type { Block } from './choose.js'
import type { KnownColumn, Segment } from './columns.js'

/** A flow of a house of its own beside those of others, below one column of pressures. */
export interface HouseBeside {
  readonly name: string
  readonly column: number
  /** The table with the flows of this house only. */
  readonly segment: Segment
}

/** Rows above the headings in which the values of the houses may stand. */
const ABOVE = 30

/**
 * Flows of several houses that share a column of pressures: a volume of its own stands above each of them. Undefined where the flows
 * are of one house.
 */
export function housesBeside({ segment }: Block): HouseBeside[] | undefined {
  const { view, head, columns } = segment
  const flows = columns.filter(({ role, numbers }) => role === 'flow' && numbers > 0)
  if (view.turned || flows.length < 2) return undefined
  for (let row = head.top - 1; row >= Math.max(0, head.top - ABOVE); row--) {
    const label = readLabel(view.text(row, labelColumn(segment, row)) ?? '')
    if (!says(label, 'volume') || says(label, 'flow')) continue
    const volumes = flows.map(({ at }) => view.number(row, at))
    if (volumes.includes(undefined) || new Set(volumes).size < 2) continue
    return flows.map((flow) => {
      const own = columns.filter((column) => column === flow || !flows.includes(column))
      return { name: nameOf(segment, flow), column: flow.at, segment: { ...segment, columns: own } }
    })
  }
  return undefined
}

/** The column of labels in front of the values of a row. */
export function labelColumn({ view, columns }: Pick<Segment, 'view' | 'columns'>, row: number): number {
  const first = Math.min(...columns.filter(({ role }) => role === 'flow').map(({ at }) => at))
  for (let at = first - 1; at > 0; at--) if (view.text(row, at) !== undefined) return at
  return 0
}

/** The uppermost text over a flow, or its heading. */
function nameOf({ view, head }: Segment, { at, label }: KnownColumn): string {
  for (let row = 0; row < head.top; row++) {
    const text = view.text(row, at)
    if (text !== undefined) return text
  }
  return label.text
}
