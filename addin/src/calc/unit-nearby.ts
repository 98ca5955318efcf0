import { findUnit, type KnownUnit, type Sheet } from '@draughtbook/shared-calc/log'

type Kind = KnownUnit['kind']

/** The unit of the heading over a picked block: the nearest text above its first cell, at most four rows up. */
export function unitAbove(
  sheet: Sheet,
  { top, left }: { top: number; left: number },
  kind: Kind,
): KnownUnit | undefined {
  for (let row = top - 2; row >= Math.max(0, top - 5); row--) {
    const cell = sheet.at(row, left - 1)
    if (!cell) continue
    const unit = cell.kind === 'text' ? unitInHeading(String(cell.value), kind) : undefined
    if (unit || cell.kind !== 'text') return unit
  }
  return undefined
}

/** The unit that stands right of a single cell, or in the label left of it. Places count from 0. */
export function unitBeside(sheet: Sheet, row: number, column: number, kind: Kind): KnownUnit | undefined {
  const right = sheet.at(row, column + 1)
  const left = column > 0 ? sheet.at(row, column - 1) : undefined
  const own = right?.kind === 'text' ? findUnit(String(right.value)) : undefined
  if (own?.kind === kind) return own
  return left?.kind === 'text' ? unitInHeading(String(left.value), kind) : undefined
}

/** The unit a heading names: `Flow (m³/h)`, `Pressure, Pa`, `q [l/s]`. */
export function unitInHeading(text: string, kind: Kind): KnownUnit | undefined {
  const candidates = [...text.matchAll(/[([]([^()[\]]+)[)\]]/g)].map(([, inside = '']) => inside)
  const last = text.split(/[,\s]+/).at(-1) ?? ''
  return [...candidates, last].map((candidate) => findUnit(candidate)).find((unit) => unit?.kind === kind)
}
