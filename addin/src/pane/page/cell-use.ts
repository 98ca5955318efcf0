import { type Area, intersection, parseArea } from '../../host/address.js'
import type { CellUse } from '../../host/host.js'

export type PlacedUse = CellUse & { area: Area }

/** The uses drawn over one sheet, with their places. */
export const usesOn = (uses: readonly CellUse[], sheet: string): PlacedUse[] =>
  uses.flatMap((use) => {
    const area = parseArea(use.reference)
    return area && (area.sheet === undefined || area.sheet === sheet) ? [{ ...use, area }] : []
  })

/** What a cell is used as; of two, what it is used for rather than that it is left out. */
export function useOn(uses: readonly PlacedUse[], here: Area): PlacedUse | undefined {
  const found = uses.filter(({ area }) => intersection(area, here))
  return found.find(({ kind }) => kind !== 'left-out') ?? found[0]
}
