import { bareUnit } from '../../cells/stated-unit.js'
import { formPlaces, type View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import { CONCEPTS, type Concept } from '../words/concepts.js'
import { type Label, readLabel, says } from '../words/label.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'
import { HEADED, headingAbove, isOfOneSign, namesNoValue } from './headings.js'
import { isAlike, type Place, placeOf } from './place.js'

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
  runs: readonly FoundRun[],
): ZeroEntry[] {
  const found: ZeroEntry[] = []
  const vague: ZeroEntry[] = []
  for (const [row, column] of formPlaces(view)) {
    const text = view.text(row, column)
    if (text === undefined || text.length > 90 || isTaken(row, column) || bareUnit(text)) continue
    // Of means of one sign the mean of all cannot be told.
    if (isOfOneSign(text)) continue
    const label = readLabel(text)
    const content = view.at(row, column + 1)
    if (content?.kind !== 'number' || isTaken(row, column + 1)) continue
    // "Mean of +", "highest": under such a heading it is no zero flow, whatever stands in front of it.
    if (namesNoValue(headingAbove(view, row, column + 1, HEADED))) continue
    const beside = view.text(row, column + 2)
    const unit = content.written.unit ?? label.unit ?? (beside === undefined ? undefined : bareUnit(beside))
    const said = says(label, 'before') !== says(label, 'after')
    // "N.DR. VOR | −1.2": a word for before or after is as good as the unit.
    const likely = unit ? unit.kind === 'pressure' && !says(label, 'barometer') : said && !isOfOther(label)
    const isVague = !likely && !unit && !Number.isInteger(content.written.value) && namesNothing(label)
    if (!(likely || isVague) || Math.abs(content.written.value) > LIKELY_MOST) continue
    const cell = view.address(row, column + 1)
    if (known.some(({ figures }) => figures.some((one) => one.cell === cell))) continue
    // Of two blocks side by side each has its own before and after.
    const list = likely ? found : vague
    const above = likely
      ? found.filter((one) => one.column === column).length
      : vague.filter((one) => one.row === row).length
    const word = says(label, 'before') ? ('before' as const) : ('after' as const)
    const which = said ? word : above % 2 === 0 ? ('before' as const) : ('after' as const)
    list.push({
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
  return found.length > 0 ? found : ofEachRun(vague, runs)
}

/** "z0: | −1.2 | z1: | −0.9": no word of the trade. */
const namesNothing = (label: Label): boolean =>
  label.tokens.length <= 3 && CONCEPT_NAMES.every((concept) => !says(label, concept))

const CONCEPT_NAMES = Object.keys(CONCEPTS) as Concept[]

/**
 * Values at the same places over or below every run, some of them below zero, or two of each run that hardly differ: exponents and the
 * like are not.
 */
function ofEachRun(vague: readonly ZeroEntry[], runs: readonly FoundRun[]): ZeroEntry[] {
  const own = new Map(runs.map((run): [FoundRun, ZeroEntry[]] => [run, []]))
  for (const entry of vague) {
    const near = runs.filter((run) => isNear(placeOf(run, entry)))
    const [run] = near.sort((one, other) => away(placeOf(one, entry)) - away(placeOf(other, entry)))
    if (run) own.get(run)?.push(entry)
  }
  const [first, ...others] = own.values()
  if (!first || first.length === 0 || first.length > 3) return []
  const places = first.map((entry) => placeOf(runs[0] as FoundRun, entry))
  const isSame = others.every(
    (list, index) =>
      list.length === first.length &&
      list.every((entry, at) => isAlike(placeOf(runs[index + 1] as FoundRun, entry), places[at] as Place)),
  )
  const all = [first, ...others].flat()
  const valuesOf = (entries: readonly ZeroEntry[]) => entries.map(({ figures }) => figures[0]?.value ?? 0)
  const isPair = [first, ...others].every(
    (entries) => entries.length === 2 && spread(valuesOf(entries)) < DRIFT,
  )
  return isSame && (isPair || valuesOf(all).some((value) => value < 0)) ? all : []
}

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values)

/** Zero flow before and after a run differs by less, Pa; common practice, no source. */
const DRIFT = 3

const isNear = ({ sheet, fromTop, fromBottom, fromLeft }: Place): boolean =>
  sheet && fromTop >= -5 && fromBottom <= 4 && fromLeft >= -1 && fromLeft <= 6

const away = ({ fromTop, fromBottom }: Place): number => (fromTop < 0 ? -fromTop : fromBottom)
