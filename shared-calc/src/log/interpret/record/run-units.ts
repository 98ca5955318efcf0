import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { likelyPascal, unitOfBuildingPressures } from '../../cells/likely-unit.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { type KnownUnit, shown, toRecordUnit } from '../../cells/units.js'
import { unitsIn } from '../tables/device-ranges.js'
import type { FoundRun } from '../tables/runs.js'
import { readLabel, says } from '../words/label.js'
import type { Draft } from './draft.js'

const PATH = 'pressure.unit'
const PA: KnownUnit = { kind: 'pressure', unit: 'Pa' }
/** The unit of the pressures of a run: stated in heading or title, by the other run, or the only one that can be. */
export function pressureUnit(draft: Draft, run: FoundRun, runs: readonly FoundRun[]): KnownUnit | undefined {
  const { pressure } = run.block
  if (pressure.unit?.kind === 'pressure') return weighed(draft, run, pressure.unit)
  if (run.readings.every((row) => row.pressure.unit)) return PA
  const typed = draft.answered(PATH)
  const answer = typeof typed === 'string' ? unitsIn(`${typed} `)[0] : undefined
  if (answer?.kind === 'pressure') return answer
  const other = runs.find((one) => one.block.pressure.unit?.kind === 'pressure')?.block.pressure.unit
  const stated = statedElsewhere(draft, run, 'pressure', runs, other, pressure.headingCell)
  if (stated) return stated
  const values = run.readings.map((row) => row.pressure.value)
  const likely = unitOfBuildingPressures(values)
  if (likely) {
    draft.tell(likelyPascal(values), pressure.headingCell, 'runs')
    return likely
  }
  draft.ask({
    path: PATH,
    cells: [pressure.headingCell],
    ...questions.pressureUnit({ heading: pressure.headingCell }),
  })
  return undefined
}

/** Highest pressures of a test, Pa: below the first it measures nothing, above the second it harms the building; common practice, no source. */
const POSSIBLE = { lowest: 8, highest: 250 }
/** In what people log pressures across a building. */
const USUAL = ['Pa', 'mmH2O', 'daPa', 'mbar', 'inH2O', 'kPa'].map(
  (unit): KnownUnit => ({ kind: 'pressure', unit }),
)
/** Answer for units that are as the headings say. */
const AS_HEADED = 'as headed'

/** The unit a heading states, unless the pressures are possible only in another: then it is asked. */
function weighed(draft: Draft, run: FoundRun, stated: KnownUnit): KnownUnit | undefined {
  const values = run.readings.flatMap(({ pressure }) => (pressure.unit ? [] : Math.abs(pressure.value)))
  const [highest, typed] = [Math.max(...values), draft.answers[PATH]]
  const inPa = (unit: KnownUnit) => toRecordUnit(highest, unit)
  const isPossible = (unit: KnownUnit) => inPa(unit) >= POSSIBLE.lowest && inPa(unit) <= POSSIBLE.highest
  const better = USUAL.filter(
    (unit) => unit.unit !== stated.unit && inPa(unit) >= LIKELY.lowest && inPa(unit) <= LIKELY.highest,
  )
  if (values.length === 0 || isPossible(stated) || better.length === 0 || typed === AS_HEADED) return stated
  const answer = typed === undefined ? undefined : unitsIn(`${typed} `)[0]
  if (answer?.kind === 'pressure') return answer
  draft.ask({
    path: PATH,
    cells: [run.block.pressure.headingCell],
    ...questions.pressureUnitDoubt({
      heading: run.block.pressure.headingCell,
      stated: shown(stated.unit),
      highest: inPa(stated),
      better: better.map(({ unit }) => shown(unit)),
    }),
  })
  return undefined
}

/** Highest pressures that tests have, Pa; common practice, no source. */
const LIKELY = { lowest: 15, highest: 150 }

/** The unit that another run or a title above states for what has none of its own; said so. */
export function statedElsewhere(
  draft: Draft,
  run: FoundRun,
  kind: 'flow' | 'pressure',
  runs: readonly FoundRun[],
  other: KnownUnit | undefined,
  headingCell: string,
): KnownUnit | undefined {
  const titled = titleUnit(run, kind, runs)
  const stated = other ?? titled?.unit
  if (!stated) return undefined
  const where = other ? undefined : titled?.cell
  draft.tell(
    runText('log-unit-elsewhere', { what: `${kind}s`, unit: shown(stated.unit), where }),
    headingCell,
    'runs',
  )
  return stated
}

/** One unit of a kind that titles above the tables of a test, or a line below them, state in words: "all flows in l/s". */
function titleUnit(
  run: FoundRun,
  kind: 'flow' | 'pressure',
  runs: readonly FoundRun[],
): { unit: KnownUnit; cell: string } | undefined {
  const found = new Map<string, { unit: KnownUnit; cell: string }>()
  const { view } = run
  const bottom = Math.max(run.bottom, ...runs.filter((one) => one.view === view).map((one) => one.bottom))
  for (let row = 0; row < view.rows; row++) {
    if (row > bottom + 6) break
    for (let column = 0; column < Math.min(view.columns, run.right + 4); column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 160) continue
      // "Flow unit | l/s"
      const alone = bareUnit(text)
      if (alone?.kind === kind && isOfUnit(view.text(row, column - 1), kind)) {
        found.set(alone.unit, { unit: alone, cell: view.address(row, column) })
        continue
      }
      // A unit of a value beside it says nothing of the table, and a unit alone belongs to its own column or value.
      const next = view.at(row, column + 1)
      const units = unitsIn(text).filter((unit) => unit.kind === kind)
      if (units.length !== 1 || next?.kind === 'number' || text.split(/\s+/).length < 2) continue
      if (
        row >= run.top &&
        column >= run.left &&
        column <= run.right &&
        view.number(row + 1, column) !== undefined
      )
        continue
      const unit = units[0] as KnownUnit
      found.set(unit.unit, { unit, cell: view.address(row, column) })
    }
  }
  return found.size === 1 ? [...found.values()][0] : undefined
}

const UNIT_WORD =
  /^(?:units?|einheit|unite|eenheid|unidad|unita|unidade|jednostka|enhed|enhet|yksikko|jednotka)$/

/** A label of the unit that all flows or pressures of a log have. */
function isOfUnit(text: string | undefined, kind: 'flow' | 'pressure'): boolean {
  const label = text === undefined || text.length > 60 ? undefined : readLabel(text)
  return label?.tokens.some((token) => UNIT_WORD.test(token)) === true && says(label, kind)
}
