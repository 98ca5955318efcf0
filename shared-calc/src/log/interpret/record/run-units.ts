import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { likelyPascal, unitOfBuildingPressures } from '../../cells/likely-unit.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { type KnownUnit, shown, toRecordUnit } from '../../cells/units.js'
import { unitsIn } from '../tables/device-ranges.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import { readLabel, says } from '../words/label.js'
import type { Draft } from './draft.js'
import type { VolumeFound } from './sizes.js'

const PA: KnownUnit = { kind: 'pressure', unit: 'Pa' }
const FLOWS = ['m^3/h', 'L/s', 'cuft/minute', 'm^3/s', 'm^3/minute'] as const
const TYPED: Record<string, string> = {
  'm^3/h': 'm3/h',
  'L/s': 'l/s',
  'cuft/minute': 'cfm',
  'm^3/s': 'm3/s',
  'm^3/minute': 'm3/min',
}

/** The unit of the pressures of a run: stated in heading or title, by the other run, or the only one that can be. */
export function pressureUnit(draft: Draft, run: FoundRun, runs: readonly FoundRun[]): KnownUnit | undefined {
  const { pressure } = run.block
  if (pressure.unit?.kind === 'pressure') return pressure.unit
  if (run.readings.every((row) => row.pressure.unit)) return PA
  const typed = draft.answered('pressure.unit')
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
    path: 'pressure.unit',
    cells: [pressure.headingCell],
    ...questions.pressureUnit({ heading: pressure.headingCell }),
  })
  return undefined
}

/** The unit of the flows of a run: stated, given as an answer, or proven by the results the log itself records. */
export function flowUnit(
  draft: Draft,
  run: FoundRun,
  runs: readonly FoundRun[],
  scope: FieldScope,
  volume: VolumeFound,
  american: boolean,
): KnownUnit | undefined {
  const [carrier] = run.block.carriers
  if (!carrier) return undefined
  if (carrier.unit?.kind === 'flow') return carrier.unit
  if (run.readings.every((row) => row.carriers.every((one) => one?.unit?.kind === 'flow')))
    return { kind: 'flow', unit: 'm^3/h' }
  const typed = draft.answers['flow.unit']
  if (typed !== undefined) {
    const unit = unitsIn(typed)[0]
    if (unit?.kind === 'flow') {
      draft.tell(
        fieldText('log-answer', { field: 'unit of the flows', answer: shown(unit.unit) }),
        carrier.headingCell,
        'runs',
      )
      return unit
    }
    draft.collector.refuse(
      'unknown-unit',
      `"${typed}" is not a unit of flow: use l/s, m3/h, cfm, m3/s or m3/min`,
      carrier.headingCell,
      'flow.unit',
    )
    return undefined
  }
  const other = runs.flatMap(({ block }) => block.carriers).find(({ unit }) => unit?.kind === 'flow')?.unit
  const stated = statedElsewhere(draft, run, 'flow', runs, other, carrier.headingCell)
  if (stated) return stated
  const mass = /\bkg\s*\/\s*(?:s|h|min)\b/i.exec(carrier.label.text)
  if (mass) {
    draft.collector.refuse(
      'unknown-unit',
      `${mass[0]} is a mass flow; log the flows in m³/h, l/s or cfm`,
      carrier.headingCell,
      'flow.unit',
    )
    return undefined
  }
  const proven = provenFlow(draft, runs, scope, volume, carrier.headingCell)
  if (proven) return proven
  draft.ask({
    path: 'flow.unit',
    cells: [carrier.headingCell],
    ...questions.flowUnit({ heading: carrier.headingCell, american }),
  })
  return undefined
}

/** The unit that another run or a title above states for what has none of its own; said so. */
function statedElsewhere(
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

/** Flow at 50 Pa of the runs, in the unit logged. */
export function loggedAt50(runs: readonly FoundRun[]): number | undefined {
  const flows = runs.flatMap(({ block }) => (block.law ? [block.law.at50] : []))
  return flows.length === runs.length && flows.length > 0
    ? flows.reduce((a, b) => a + b) / flows.length
    : undefined
}

function provenFlow(
  draft: Draft,
  runs: readonly FoundRun[],
  scope: FieldScope,
  volume: VolumeFound,
  cell: string,
): KnownUnit | undefined {
  const at50 = loggedAt50(runs)
  const record = draft.record as { building?: { volume_m3?: number; envelopeArea_m2?: number } }
  const size = { n50: record.building?.volume_m3, qE50: record.building?.envelopeArea_m2 }
  if (at50 === undefined || volume.open) return undefined
  for (const name of ['n50', 'qE50', 'q50'] as const)
    for (const field of scope.all(name)) {
      if (field.content.kind !== 'number') continue
      const { value } = field.content.written
      const unit = field.content.written.unit ?? field.unit
      const wanted =
        name === 'q50'
          ? unit?.kind === 'flow'
            ? toRecordUnit(value, unit)
            : undefined
          : size[name] === undefined
            ? undefined
            : value * (size[name] as number)
      if (wanted === undefined) continue
      const fitting = FLOWS.filter(
        (one) => Math.abs(toRecordUnit(at50, { kind: 'flow', unit: one }) / wanted - 1) < 0.08,
      )
      if (fitting.length !== 1) continue
      const proven: KnownUnit = { kind: 'flow', unit: fitting[0] as string }
      draft.tell(
        runText('log-unit-proven/flows', { unit: shown(proven.unit), result: value, cell: field.cell }),
        [cell, field.cell],
        'runs',
      )
      return proven
    }
  return undefined
}

export const typedUnit = (unit: string): string => TYPED[unit] ?? unit
