import { figureOf } from '../../cells/number-text.js'
import { findUnit } from '../../cells/units.js'
import { formPlaces, leadOf, type View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'

/** Three lengths of a building written as a product: "12.4 x 8.2 x 2.5 m". */
export interface Sides {
  readonly text: string
  readonly cell: string
  /** Their product, to the tenth. */
  readonly amount: number
  readonly unit: 'm³' | 'ft³'
  /** It stands alone behind a label of the volume. */
  readonly isLabelled: boolean
}

const PRODUCT =
  /(?<![\d.,])(\d{1,4}(?:[.,]\d{1,3})?)\s?(m|ft)?\s?[x×*]\s?(\d{1,4}(?:[.,]\d{1,3})?)\s?(m|ft)?\s?[x×*]\s?(\d{1,4}(?:[.,]\d{1,3})?)\s?(m|ft)?(?![\p{L}\d])/iu

/** The one product of three lengths on the visible sheets; undefined where there is none, or several that differ. */
export function sidesIn(views: readonly View[]): Sides | undefined {
  const found = views.flatMap((view) => {
    const own: Sides[] = []
    for (const [row, column] of formPlaces(view)) {
      const text = view.text(row, column)
      const sides =
        text === undefined || text.length > 120 ? undefined : productIn(text, labelOf(view, row, column))
      if (sides) own.push({ ...sides, cell: view.address(row, column) })
    }
    return own
  })
  const [first] = found
  return found.every(({ amount }) => amount === first?.amount) ? first : undefined
}

/** The label of a volume in front of a cell. */
function labelOf(view: View, row: number, column: number): Label | undefined {
  const text = leadOf(view, row, column, 1)
  const label = text === undefined || text.length > 60 ? undefined : readLabel(text)
  return label && says(label, 'volume') && !says(label, 'flow') ? label : undefined
}

function productIn(text: string, label: Label | undefined): Omit<Sides, 'cell'> | undefined {
  const [whole, first, one, second, two, third, three] = PRODUCT.exec(text) ?? []
  const units = new Set([one, two, three].flatMap((unit) => (unit ? findUnit(unit)?.unit : undefined) ?? []))
  const [unit = UNITS[label?.unit?.unit ?? '']] = units
  if (whole === undefined || units.size > 1 || unit === undefined) return undefined
  const product = [first, second, third].reduce((all, length) => all * figureOf(length ?? ''), 1)
  return {
    text: whole.trim(),
    amount: Number(product.toFixed(1)),
    unit: unit === 'ft' ? 'ft³' : 'm³',
    isLabelled: label !== undefined && whole.trim() === text.trim(),
  }
}

/** Units of lengths whose product is in that of a volume. */
const UNITS: Readonly<Record<string, string>> = { 'm^3': 'm', cuft: 'ft' }
