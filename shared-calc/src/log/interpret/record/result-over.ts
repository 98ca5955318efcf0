import type { Block } from '../tables/choose.js'
import { type KnownColumn, PER_AREA, PER_HOUR } from '../tables/columns.js'

interface Result {
  readonly text: string
  /** What it is, in words. */
  readonly per: string
  readonly cell: string
}

/** "Air permeability (m³/(h·m²))" above the numbers that looked like flows: the curve through a result is the same but for its size. */
export function resultOver({ segment: { view, head } }: Block, { at }: KnownColumn): Result | undefined {
  for (let row = head.first - 1; row >= Math.max(0, head.first - 2); row--) {
    const text = view.text(row, at)
    if (text === undefined) continue
    const per = PER_AREA.test(text)
      ? 'a flow per square metre'
      : PER_HOUR.test(text)
        ? 'an air change rate'
        : undefined
    if (per) return { text, per, cell: view.address(row, at) }
  }
  return undefined
}
