import { figureOf } from '../../cells/number-text.js'
import type { KnownUnit } from '../../cells/units.js'
import { formPlaces, placeIn, type View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'
import { type FoundDevice, flowPerPressure, isCoefficient, isExponent, unitsIn } from './device-ranges.js'

/**
 * A flow device without a table: its formula in words ("Q = 61.0 · Δp^0.51, m³/h and Pa") or its coefficient and exponent as two
 * labelled values, one below or beside the other. Only where one such pair stands in the log.
 */
export function deviceInWords(views: readonly View[]): FoundDevice | undefined {
  const found = views.flatMap((view) => {
    const own: FoundDevice[] = []
    for (const [row, column] of formPlaces(view)) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 120) continue
      const device = inFormula(view, row, column, text) ?? inTwoValues(view, row, column, text)
      if (device) own.push(device)
    }
    return own
  })
  return found.length === 1 ? found[0] : ofRings(found)
}

/** "Ring A: Q = 22.5 · Δp^0.502" and the same for others: a range each, where every formula names another. */
function ofRings(found: readonly FoundDevice[]): FoundDevice | undefined {
  const [first] = found
  const ranges = found.flatMap(({ view, ranges: [range] }) => {
    const place = range && placeIn(view, range.cells.label)
    const text = place && view.text(place.row, place.column)
    const [ring] = /^[^:=]*(?=:)/.exec(text ?? '') ?? []
    const words = ring?.trim().split(/\s+/) ?? []
    const label = words.at(-1)
    return range && label && words.some((word) => says(readLabel(word), 'range')) ? { ...range, label } : []
  })
  if (!first || new Set(ranges.map(({ label }) => label)).size < found.length) return undefined
  const flowUnit = found.map((one) => one.flowUnit).find((one) => one) ?? flowUnitNear(found)
  return {
    ...first,
    ranges,
    ...(flowUnit ? { flowUnit } : {}),
    cells: found.map(({ cells }) => cells).join(', '),
  }
}

const FORMULA = /=(\d{1,4}(?:[.,]\d{1,4})?)[·⋅*×x]?\(?[ΔδΔ∆d]?p\p{L}{0,6}\)?(?:\^|\*\*)?\(?(0[.,]\d{1,5})/iu

function inFormula(view: View, row: number, column: number, text: string): FoundDevice | undefined {
  const [, coefficient, exponent] = FORMULA.exec(text.normalize('NFC').replace(/\s/g, '')) ?? []
  if (coefficient === undefined || exponent === undefined) return undefined
  // The formula of the building's own leakage is no device.
  if (says(readLabel(text), 'envelope')) return undefined
  const cell = view.address(row, column)
  return made(view, row, unitsIn(text), {
    label: 'formula',
    coefficient: figureOf(coefficient),
    exponent: figureOf(exponent),
    cells: { label: cell, coefficient: cell, exponent: cell },
  })
}

/** "Fan C | 61.0" with "Fan n | 0.51" below it, or behind it in the same row. */
function inTwoValues(view: View, row: number, column: number, text: string): FoundDevice | undefined {
  const label = readLabel(text)
  const own = label.tokens.filter((token) => !says(readLabel(token), 'device'))
  const coefficient = view.number(row, column + 1)
  if (coefficient === undefined || !(coefficient > 0) || !isCoefficient(own)) return undefined
  for (const [below, right] of [
    [row + 1, column],
    [row, column + 2],
    [row, column + 3],
  ] as const) {
    const other = view.text(below, right)
    const exponent = view.number(below, right + 1)
    if (other === undefined || exponent === undefined || exponent < 0.4 || exponent > 0.6) continue
    if (!isExponent(readLabel(other).tokens.filter((token) => !says(readLabel(token), 'device')))) continue
    const said = [label, readLabel(other), ...titlesOf(view, row, column).map(readLabel)]
    // A house's own C and n stand among its results.
    if (!said.some((one) => says(one, 'device'))) return undefined
    const per = flowPerPressure(text) ?? flowPerPressure(view.text(row, column + 2) ?? '')
    const units = per ? [per] : unitsIn(`${text} ${other} ${view.text(row, column + 2) ?? ''}`)
    return made(view, row, units, {
      label: label.text,
      coefficient,
      exponent,
      cells: {
        label: view.address(row, column),
        coefficient: view.address(row, column + 1),
        exponent: view.address(below, right + 1),
      },
    })
  }
  return undefined
}

/** Texts right above a value: the title of its block. */
const titlesOf = (view: View, row: number, column: number): string[] =>
  [1, 2, 3].flatMap((up) => view.text(row - up, column) ?? [])

function made(
  view: View,
  row: number,
  units: readonly KnownUnit[],
  range: FoundDevice['ranges'][number],
): FoundDevice {
  const flowUnit = units.find(({ kind }) => kind === 'flow')
  const pressureUnit = units.find(({ kind }) => kind === 'pressure')
  return {
    view,
    ranges: [range],
    ...(flowUnit ? { flowUnit } : {}),
    ...(pressureUnit ? { pressureUnit } : {}),
    rows: { first: row, last: row },
    cells: range.cells.coefficient,
  }
}

/** Lines over and below formulas in which their units are told. */
const NEAR = 2

/** "q in m³/h, Δp in Pa" in the lines around several formulas. */
function flowUnitNear(found: readonly FoundDevice[]): KnownUnit | undefined {
  const rows = found.map(({ rows: { first } }) => first)
  const view = found[0]?.view
  for (let row = Math.max(0, Math.min(...rows) - NEAR); view && row <= Math.max(...rows) + NEAR; row++)
    for (let column = 0; column < Math.min(view.columns, 12); column++) {
      const text = view.text(row, column)
      const unit =
        text === undefined || text.length > 90 ? undefined : unitsIn(text).find(({ kind }) => kind === 'flow')
      if (unit) return unit
    }
  return undefined
}
