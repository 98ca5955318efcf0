import { toRecordUnit } from '../../cells/units.js'
import { writtenIn } from '../../cells/written.js'
import { formPlaces, type View } from '../grid/view.js'
import { unitsIn } from '../tables/device-ranges.js'
import { readLabel, says } from '../words/label.js'

/** From which to which flow the log says that its flow device measures, m³/h. */
export interface RangeOfDevice {
  readonly lowest: number
  readonly highest: number
  /** In its own words. */
  readonly text: string
  readonly cell: string
}

/** "Fan range: 900 – 4500 m³/h", or the label in one cell and "900 to 4500 m³/h" in the next. Of several rings all together. */
export function rangeOfDevice(views: readonly View[]): RangeOfDevice | undefined {
  const found = views.flatMap((view) =>
    [...formPlaces(view)].flatMap(([row, column]) => rangeIn(view, row, column) ?? []),
  )
  const [first] = found
  if (!first) return undefined
  return {
    ...first,
    lowest: Math.min(...found.map(({ lowest }) => lowest)),
    highest: Math.max(...found.map(({ highest }) => highest)),
  }
}

const FROM_TO =
  /(?<![\d.,])(\d[\d.,]{0,9})\s?(?:[-–—…]|\.{2,3}|to|bis|à|tot|al|til|till|do|až|ad?)\s?(\d[\d.,]{0,9})(?![\d.,])/iu
const LONGEST = 120

function rangeIn(view: View, row: number, column: number): RangeOfDevice | undefined {
  const text = view.text(row, column)
  if (text === undefined || text.length > LONGEST) return undefined
  const match = FROM_TO.exec(text)
  if (!match) return undefined
  const [whole, from = '', to = ''] = match
  const [unit] = unitsIn(text.slice(match.index + whole.length).trim())
  const [least, most] = [from, to].map((one) => writtenIn(one, view.decimal)?.value)
  if (unit?.kind !== 'flow' || least === undefined || most === undefined || least >= most) return undefined
  const label = readLabel(`${view.text(row, column - 1) ?? ''} ${text}`)
  if (!says(label, 'device') && !says(label, 'range')) return undefined
  const [lowest, highest] = [least, most].map((value) => toRecordUnit(value, unit)) as [number, number]
  return { lowest, highest, text, cell: view.address(row, column) }
}
