import { bareUnit } from '../../cells/stated-unit.js'
import { formPlaces, type View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'

/** Things that are noted before and after a test, and are no pressures. */
const isOfOther = (label: Label): boolean =>
  (['temperature', 'time', 'date', 'wind', 'humidity', 'flow', 'volume', 'index', 'speed'] as const).some(
    (thing) => says(label, thing),
  )

/**
 * Small pressures by a label this dictionary does not know: where a log seems to hold no zero flow they may be it, and are asked about.
 * In the order of the sheet, before and after by turns.
 */
export function unknownPressures(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  known: readonly ZeroEntry[],
): ZeroEntry[] {
  const found: ZeroEntry[] = []
  for (const [row, column] of formPlaces(view)) {
    const text = view.text(row, column)
    if (text === undefined || text.length > 90 || isTaken(row, column) || bareUnit(text)) continue
    const label = readLabel(text)
    const content = view.at(row, column + 1)
    if (content?.kind !== 'number' || isTaken(row, column + 1)) continue
    const beside = view.text(row, column + 2)
    const unit = content.written.unit ?? label.unit ?? (beside === undefined ? undefined : bareUnit(beside))
    const said = says(label, 'before') !== says(label, 'after')
    // "N.DR. VOR | −1.2": a word for before or after is as good as the unit.
    const likely = unit ? unit.kind === 'pressure' && !says(label, 'barometer') : said && !isOfOther(label)
    if (!likely || Math.abs(content.written.value) > LIKELY_MOST) continue
    const cell = view.address(row, column + 1)
    if (known.some(({ figures }) => figures.some((one) => one.cell === cell))) continue
    // Of two blocks side by side each has its own before and after.
    const above = found.filter((one) => one.column === column).length
    const word = says(label, 'before') ? ('before' as const) : ('after' as const)
    const which = said ? word : above % 2 === 0 ? ('before' as const) : ('after' as const)
    found.push({
      view,
      row,
      column,
      which,
      figures: [{ ...content.written, cell }],
      ...(unit ? { unit } : {}),
      label: label.text,
      labelCell: view.address(row, column),
    })
  }
  return found
}
