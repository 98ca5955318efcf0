import { cellText } from '../../../catalogue/findings/log/cells.js'
import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { type Direction, oppositeDirection } from '../../../contract/record/index.js'
import type { KnownUnit } from '../../cells/units.js'
import type { Grid } from '../../grid/grid.js'
import { mean } from '../../mean.js'
import { unstoredIn } from '../grid/unstored.js'
import type { View } from '../grid/view.js'
import type { FoundDevice } from '../tables/device-ranges.js'
import type { FoundRun } from '../tables/runs.js'
import type { Figure } from '../tables/table-row.js'
import type { Copy } from '../tests/copies.js'
import type { FieldScope } from '../tests/scope.js'
import type { TestGroup } from '../tests/test-group.js'
import type { ZeroFlowOfLog } from '../zero-flow/of-log.js'
import { askedZeroFlow } from './asked-zero-flow.js'
import { withoutCopied } from './copied-readings.js'
import { type DeviceInRecord, putDevice } from './device.js'
import { deviceOf } from './device-tables.js'
import { withoutDoubtful } from './doubtful-rows.js'
import type { Draft } from './draft.js'
import { exchangedTitles } from './exchanged-titles.js'
import { flowUnits } from './flow-units.js'
import { withMeasuredPressure } from './measured-pressure.js'
import { rangeOverRun } from './range-over-run.js'
import { resultsAt50 } from './results-at-50.js'
import { askColumns } from './rival-columns.js'
import { pressureUnit } from './run-units.js'
import { tellLeftOut, tellUses } from './run-uses.js'
import { signsOf } from './signs.js'
import type { VolumeFound } from './sizes.js'
import { fromNormalAir, isNormalAir, putStatedAir } from './stated-air.js'
import { withStatedInduced } from './stated-induced.js'
import { type StatedSign, statedSign } from './stated-sign.js'
import { askUnnamed, withoutRefused } from './unnamed-tables.js'
import { withZeroOfEach } from './zero-of-each.js'
import { type ZeroValues, zeroInPa, zerosOf } from './zero-values.js'

export interface RunContext {
  readonly grid: Grid
  readonly scope: FieldScope
  readonly zeroFlow: ZeroFlowOfLog
  /** The test whose runs these are. */
  readonly group: TestGroup
  /** Runs with the readings of another house. */
  readonly copied: readonly Copy[]
  readonly devices: readonly FoundDevice[]
  readonly volume: VolumeFound
  readonly american: boolean
  /** Sheets that say something of this test, where the log holds no other. */
  readonly forms: readonly View[]
}

/** The runs of a test, in the units of records.  */
export function putRuns(draft: Draft, given: readonly FoundRun[], context: RunContext) {
  const kept = withoutCopied(draft, withoutRefused(draft, given), context.copied)
  const counted = withoutDoubtful(draft, kept)
  const saidOfSign = statedSign(counted, context.forms)
  const directions = directionsOf(draft, counted, saidOfSign)
  const found = kept.map((run) => zerosOf(draft, run, context.zeroFlow.assigned))
  const runs = counted.map((run, index) =>
    withStatedInduced(
      withZeroOfEach(
        withMeasuredPressure(draft, run, directions[index], meanOf(found[index])),
        found[index]?.before !== undefined || found[index]?.after !== undefined,
      ),
      counted,
      context.forms,
    ),
  )
  const zeros = runs.map((run, index) =>
    askedZeroFlow(
      draft,
      run,
      index,
      directions[index],
      found[index] ?? {},
      context.zeroFlow.doubtsOf(kept[index] as FoundRun, context.group),
    ),
  )
  askUnnamed(draft, runs)
  askColumns(draft, runs, resultsAt50(draft, context.scope))
  // Of columns that are exchanged no sign can be told yet.
  const isOpen = runs.some(({ block }) => block.doubts.some(({ exchanged }) => exchanged))
  const signs = signsOf(
    draft,
    (isOpen ? [] : runs).map((run, index) => ({
      direction: directions[index],
      pressures: run.readings.map((row) => row.pressure.value),
      zero: mean(
        [...(zeros[index]?.before?.figures ?? []), ...(zeros[index]?.after?.figures ?? [])].map(
          ({ value }) => value,
        ),
      ),
      cell: run.block.pressure.headingCell,
      induced: run.block.pressure.role === 'induced',
    })),
    saidOfSign,
  )
  const device = runs.some(({ block }) => block.carriers[0]?.role === 'device')
    ? putDevice(draft, deviceOf(draft, context.devices, runs), unstoredAmong(runs))
    : undefined
  putStatedAir(draft, runs, context.forms, directions)
  const pressureUnits = runs.map((run) => pressureUnit(draft, run, runs))
  const unitsOfFlows = flowUnits(draft, runs, context)
  for (const [index, run] of runs.entries()) {
    const direction = directions[index]
    const unit = pressureUnits[index]
    const isDevice = run.block.carriers[0]?.role === 'device'
    const flow = unitsOfFlows[index]
    tellUses(draft, run, index, direction)
    tellLeftOut(draft, run, index, context.grid)
    tellMeans(draft, run, index)
    if (!direction || !unit || (!isDevice && !flow)) continue
    const sign = signs[index] ?? { readings: 1, zero: 1 }
    const zeroOf = (values: ZeroValues | undefined, field: string) =>
      zeroInPa(draft, values, unit, sign.zero, `runs[${index}].${field}`, run.block.pressure.unit)
    const before = zeroOf(zeros[index]?.before, 'zeroFlowBefore_Pa')
    const after = zeroOf(zeros[index]?.after, 'zeroFlowAfter_Pa')
    const offset = run.block.pressure.role === 'induced' ? inducedOffset(draft, run, index, before, after) : 0
    draft.put(`runs[${index}].direction`, direction)
    if (before.length > 0) draft.put(`runs[${index}].zeroFlowBefore_Pa`, before)
    if (after.length > 0) draft.put(`runs[${index}].zeroFlowAfter_Pa`, after)
    const ofRun = isDevice && device ? rangeOverRun(run, runs, device.labels) : undefined
    if (ofRun && run.block.ranges.every((range) => !range))
      draft.use(ofRun.cell, ofRun.text, 'range of the flow device', `runs[${index}].readings`)
    for (const [at, row] of run.readings.entries()) {
      const path = `runs[${index}].readings[${at}]`
      const measured = draft.quantity(row.pressure, unit, row.pressure.cell, `${path}.pressure_Pa`)
      draft.put(`${path}.pressure_Pa`, measured * sign.readings + offset, row.pressure.cell)
      if (row.hidden)
        draft.tell(cellText('log-hidden', { what: 'reading', hidden: 'row' }), row.pressure.cell, path)
      const figures = row.carriers.flatMap((figure, carrier) => (figure ? [{ figure, carrier }] : []))
      for (const [nth, { figure, carrier }] of figures.entries()) {
        const base = figures.length > 1 ? `${path}.devices[${nth}]` : path
        if (isDevice)
          putDeviceReading(
            draft,
            figure,
            row.ranges[carrier] ?? ofRun,
            carrier,
            base,
            unit,
            run,
            direction,
            device,
          )
        else putFlow(draft, figure, flow as KnownUnit, `${base}.flow_m3_h`)
      }
    }
  }
}

/** Readings that are the mean of several rows of a step. */
function tellMeans(draft: Draft, { readings }: FoundRun, index: number): void {
  const cells = readings.flatMap(({ meanOf }) => meanOf?.cells ?? [])
  const steps = readings[0]?.meanOf?.steps
  if (steps)
    draft.tell(
      runText('log-step-means', {
        heading: steps.label.text,
        rows: cells.length,
        readings: readings.length,
      }),
      cells,
      `runs[${index}].readings`,
    )
}

/** A formula without a result among the readings: most likely the flow. */
const unstoredAmong = (runs: readonly FoundRun[]): string | undefined =>
  runs.flatMap(({ view, readings }) => readings.flatMap(({ row }) => unstoredIn(view, row, row + 1) ?? []))[0]

/** Mean of what was taken before and what was taken after. */
function meanOf(zeros: { before?: ZeroValues; after?: ZeroValues } | undefined): number | undefined {
  return mean(
    [zeros?.before, zeros?.after].flatMap((one) => mean(one?.figures.map(({ value }) => value) ?? []) ?? []),
  )
}

function directionsOf(
  draft: Draft,
  runs: readonly FoundRun[],
  stated: StatedSign | undefined,
): (Direction | undefined)[] {
  const exchanged = exchangedTitles(draft, runs, stated)
  if (exchanged) return exchanged
  const known = runs.map((run, index): Direction | undefined => {
    const given = draft.answered(`runs[${index}].direction`)
    if (given === 'depressurisation' || given === 'pressurisation') return given
    const negative = run.readings.every((row) => row.pressure.value < 0)
    const reversed = runs.some(
      (one) =>
        one !== run &&
        one.direction === 'depressurisation' &&
        one.readings.every((row) => row.pressure.value > 0),
    )
    if (
      run.direction === 'pressurisation' &&
      negative &&
      !reversed &&
      stated?.order !== 'outside minus inside'
    ) {
      draft.tell(
        runText('log-direction/reversed', { from: run.directionFrom }),
        run.block.pressure.headingCell,
        `runs[${index}].direction`,
      )
      return 'depressurisation'
    }
    if (run.direction) return run.direction
    if (negative) {
      draft.tell(
        runText('log-direction/negative'),
        run.block.pressure.headingCell,
        `runs[${index}].direction`,
      )
      return 'depressurisation'
    }
    return undefined
  })
  return known.map((direction, index) => {
    if (direction) return direction
    const other = known.find((one) => one !== undefined)
    const run = runs[index] as FoundRun
    if (runs.length === 2 && other) {
      const left = oppositeDirection(other)
      draft.tell(
        runText('log-direction/other', { other, own: left }),
        run.block.pressure.headingCell,
        `runs[${index}].direction`,
      )
      return left
    }
    draft.ask({
      path: `runs[${index}].direction`,
      cells: [run.block.pressure.headingCell],
      ...questions.direction({ heading: run.block.pressure.headingCell }),
    })
    return undefined
  })
}

/** Pressures with the zero-flow pressure already subtracted get it back, so that it is subtracted once and its limits are still checked. */
function inducedOffset(
  draft: Draft,
  run: FoundRun,
  index: number,
  before: readonly number[],
  after: readonly number[],
): number {
  const parts = [mean(before), mean(after)].filter((one): one is number => one !== undefined)
  const offset = mean(parts) ?? 0
  const path = `runs[${index}].readings`
  const added = parts.length > 0 ? offset : undefined
  draft.tell(
    runText('log-induced', { heading: run.block.pressure.label.text, added }),
    run.block.pressure.headingCell,
    path,
  )
  return offset
}

function putFlow(draft: Draft, figure: Figure, unit: KnownUnit, path: string): void {
  if (figure.value < 0) draft.tell(runText('log-flow-sign'), figure.cell, path)
  const flow = Math.abs(draft.quantity(figure, unit, figure.cell, path))
  draft.put(path, isNormalAir(draft) ? fromNormalAir(flow).flow : flow, figure.cell)
}

function putDeviceReading(
  draft: Draft,
  figure: Figure,
  range: { readonly text: string; readonly cell: string } | undefined,
  carrier: number,
  base: string,
  pressure: KnownUnit,
  run: FoundRun,
  direction: Direction,
  device: DeviceInRecord | undefined,
): void {
  const column = run.block.carriers[carrier]
  const unit = column?.unit?.kind === 'pressure' ? column.unit : pressure
  const path = `${base}.devicePressure_Pa`
  draft.put(path, Math.abs(draft.quantity(figure, unit, figure.cell, path)), figure.cell)
  const label = device?.rangeOf(range?.text, range?.cell ?? figure.cell, {
    direction,
    heading: column?.label.text ?? '',
  })
  if (label !== undefined) draft.put(`${base}.range`, label, range?.cell)
}
