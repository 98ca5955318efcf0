import type { EnvelopeElement, Space, TakeOff } from '../../contract/record/index.js'
import { type Block, byRule, type Calculation, columnOf, fromRecord, type Given } from '../../engine/index.js'

/** Standard uncertainty of a length where the take-off states none, m; rule `assumed-length-uncertainty` says so. */
export const ASSUMED_LENGTH_UNCERTAINTY_M = 0.02

/** A part of the take-off with its place in the record. */
export interface Part<T extends Space | EnvelopeElement> {
  readonly part: T
  readonly path: string
}

/** Where the volume or area of a part stands once its block is worked out. */
export interface PlacedRow {
  /** Of a space or an element: their symbols differ by shape. */
  readonly block: Block<string>
  readonly row: number
}

/** +count or −count, as the part is added or taken off. */
export function signedCount({ part, path }: Part<Space | EnvelopeElement>): Given {
  const count = part.count ?? 1
  if (part.use === 'exclude') return byRule(-count, `subtracted: ${part.reason ?? ''}`)
  return part.count === undefined ? byRule(1, 'one of them') : fromRecord(`${path}.count`, count)
}

/** Standard uncertainty of the lengths of a part: its own, the take-off's, or the assumed one. */
export function lengthUncertainty(
  takeOff: TakeOff,
  { part, path }: Part<Space | EnvelopeElement>,
  at: string,
): Given {
  if (part.lengthUncertainty_m !== undefined)
    return fromRecord(`${path}.lengthUncertainty_m`, part.lengthUncertainty_m)
  if (takeOff.lengthUncertainty_m !== undefined)
    return fromRecord(`${at}.lengthUncertainty_m`, takeOff.lengthUncertainty_m)
  return {
    value: ASSUMED_LENGTH_UNCERTAINTY_M,
    origin: { kind: 'assumed', reason: 'assumed-length-uncertainty' },
  }
}

type Cell = (index: number) => Given

/**
 * Works out the parts of one kind as rows of one block, and says where each stands.
 * @param cells - the columns of the block, each as a function of the part's place in `parts`
 */
export function addRows<T extends Space | EnvelopeElement>(
  calculation: Calculation,
  id: string,
  title: string,
  chapter: Parameters<Calculation['add']>[2],
  parts: readonly Part<T>[],
  cells: Readonly<Record<string, Cell>>,
): Map<T, PlacedRow> {
  if (parts.length === 0) return new Map()
  const columns = Object.entries(cells).map(([symbol, cell]) => [
    symbol,
    columnOf(parts.map((_, index) => cell(index))),
  ])
  const block = calculation.add(id, title, chapter, Object.fromEntries(columns))
  return new Map(parts.map(({ part }, row) => [part, { block, row }]))
}
