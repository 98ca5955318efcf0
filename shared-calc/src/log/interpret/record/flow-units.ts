import { fieldText } from '../../../catalogue/findings/log/fields.js'
import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { type KnownUnit, shown } from '../../cells/units.js'
import { unitsIn } from '../tables/device-ranges.js'
import type { FoundRun } from '../tables/runs.js'
import type { FieldScope } from '../tests/scope.js'
import type { Draft } from './draft.js'
import { rangeOfDevice } from './range-of-device.js'
import { resultOver } from './result-over.js'
import { doubtOfUnits, provenUnit, resultsAt50, unusualChange } from './results-at-50.js'
import { statedElsewhere } from './run-units.js'
import type { VolumeFound } from './sizes.js'

const PATH = 'flow.unit'
const M3_H: KnownUnit = { kind: 'flow', unit: 'm^3/h' }

/** Answer for units that are as the headings of the columns say. */
const AS_HEADED = 'as headed'

export interface FlowContext {
  readonly scope: FieldScope
  readonly volume: VolumeFound
  readonly american: boolean
}

/**
 * The unit of the flows of each run: stated, given as an answer, or proven by the results the log itself records. Stated units are
 * weighed together: where the two directions, or the results of the log, fit only with another unit, it is asked.
 */
export function flowUnits(
  draft: Draft,
  runs: readonly FoundRun[],
  context: FlowContext,
): readonly (KnownUnit | undefined)[] {
  const units = runs.map((run) => (isOfDevice(run) ? undefined : flowUnit(draft, run, runs, context)))
  if (units.includes(undefined) || runs.some((run) => !statesUnit(run))) return units
  const stated = units as readonly KnownUnit[]
  const range = () => rangeOfDevice([...new Set(runs.map(({ view }) => view))])
  const results = resultsAt50(draft, context.scope)
  const doubt = doubtOfUnits(runs, stated, results, sizeOf(draft), range)
  if (!doubt) {
    const n50 = unusualChange(runs, stated, results, sizeOf(draft))
    if (n50 !== undefined) draft.tell(runText('log-unusual-leakage', { n50 }), headings(runs), 'runs')
    return units
  }
  const cells = [...headings(runs), ...doubt.cells]
  const typed = draft.answers[PATH]
  if (typed === AS_HEADED) return units
  const answer = typed === undefined ? undefined : answeredUnit(draft, typed, cells[0] ?? '')
  if (answer) return stated.map(() => answer)
  if (typed === undefined) draft.ask({ path: PATH, cells, ...questions.flowUnitDoubt(doubt) })
  return stated.map(() => undefined)
}

const headings = (runs: readonly FoundRun[]): string[] =>
  runs.map(({ block }) => block.carriers[0]?.headingCell ?? '')

const isOfDevice = ({ block }: FoundRun): boolean => block.carriers[0]?.role === 'device'

const sizeOf = (draft: Draft): number | undefined =>
  (draft.record as { building?: { volume_m3?: number } }).building?.volume_m3

/** Whether every flow is headed with its unit; one behind each number leaves no doubt. */
const statesUnit = ({ block }: FoundRun): boolean => block.carriers[0]?.unit?.kind === 'flow'

function flowUnit(
  draft: Draft,
  run: FoundRun,
  runs: readonly FoundRun[],
  { scope, volume, american }: FlowContext,
): KnownUnit | undefined {
  const [carrier] = run.block.carriers
  if (!carrier) return undefined
  const exchanged = run.block.doubts.some(({ unitsExchanged }) => unitsExchanged)
  const meant = exchanged ? draft.answers[PATH] : undefined
  if (meant !== undefined && meant !== AS_HEADED) return answeredUnit(draft, meant, carrier.headingCell)
  const rival = rivalUnit(run)
  if (rival && carrier.unit && !exchanged) {
    const units = [carrier.unit, rival].map(({ unit }) => shown(unit))
    const answer = draft.answers[PATH]
    if (answer !== undefined) return answeredUnit(draft, answer, carrier.headingCell)
    draft.ask({
      path: PATH,
      cells: [carrier.headingCell],
      ...questions.flowUnitTwice({ cell: carrier.headingCell, units }),
    })
    return undefined
  }
  if (carrier.unit?.kind === 'flow') return carrier.unit
  if (run.readings.every((row) => row.carriers.every((one) => one?.unit?.kind === 'flow'))) return M3_H
  const result = resultOver(run.block, carrier)
  if (result) {
    draft.collector.refuse(
      'not-found',
      `"${result.text}" is ${result.per}, not an air flow; write the measured air flows in the log, with a heading such as "Flow (m³/h)", and read it again`,
      result.cell,
      PATH,
    )
    return undefined
  }
  const typed = draft.answers[PATH]
  if (typed !== undefined) return answeredUnit(draft, typed, carrier.headingCell)
  const other = runs.flatMap(({ block }) => block.carriers).find(({ unit }) => unit?.kind === 'flow')?.unit
  const stated = statedElsewhere(draft, run, 'flow', runs, other, carrier.headingCell)
  if (stated) return stated
  const mass = /\bkg\s*\/\s*(?:s|h|min)\b/i.exec(carrier.label.text)
  if (mass) {
    draft.collector.refuse(
      'unknown-unit',
      `${mass[0]} is a mass flow; log the flows in m³/h, l/s or cfm`,
      carrier.headingCell,
      PATH,
    )
    return undefined
  }
  const proven = volume.open ? undefined : provenUnit(runs, resultsAt50(draft, scope))
  if (proven) {
    draft.tell(
      runText('log-unit-proven/flows', {
        unit: shown(proven.unit.unit),
        result: proven.by.value,
        cell: proven.by.cell,
      }),
      [carrier.headingCell, proven.by.cell],
      'runs',
    )
    return proven.unit
  }
  draft.ask({
    path: PATH,
    cells: [carrier.headingCell],
    ...questions.flowUnit({ heading: carrier.headingCell, american }),
  })
  return undefined
}

/** "Flow in l/s" over a row of units that says m³/h; a title over several columns names those of all. */
function rivalUnit({ block }: FoundRun): KnownUnit | undefined {
  const [carrier] = block.carriers
  const named = unitsIn(carrier?.label.text ?? '').filter(({ kind }) => kind === 'flow')
  const [other] = named
  if (carrier?.unit?.kind !== 'flow' || !other || named.some(({ unit }) => unit !== other.unit))
    return undefined
  const isOfOther = block.segment.columns.some((one) => one !== carrier && one.unit?.kind === 'flow')
  return other.unit === carrier.unit.unit || isOfOther ? undefined : other
}

function answeredUnit(draft: Draft, typed: string, cell: string): KnownUnit | undefined {
  const unit = unitsIn(typed)[0]
  if (unit?.kind === 'flow') {
    draft.tell(
      fieldText('log-answer', { field: 'unit of the flows', answer: shown(unit.unit) }),
      cell,
      'runs',
    )
    return unit
  }
  draft.collector.refuse(
    'unknown-unit',
    `"${typed}" is not a unit of flow: use l/s, m3/h, cfm, m3/s or m3/min`,
    cell,
    PATH,
  )
  return undefined
}
