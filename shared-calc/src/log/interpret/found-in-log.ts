import { fewestReadings } from '../../methods/method.js'
import type { Grid } from '../grid/grid.js'
import type { FoundField } from './fields/found-field.js'
import { type FieldsOfSheet, fieldsOfSheet } from './fields/labels-behind.js'
import { pairedView } from './grid/paired-view.js'
import { sectionedView } from './grid/sectioned-view.js'
import { stackedView } from './grid/stacked-view.js'
import { unstoredColumn } from './grid/unstored.js'
import { turned, type View, viewOf } from './grid/view.js'
import type { Answers } from './interpretation.js'
import { NotSearched } from './not-searched.js'
import { methodOfLog } from './record/method.js'
import { findSheetTables, type SheetTables } from './sheet-tables.js'
import { bareHeads } from './tables/bare-heads.js'
import { type FoundDevice, findDevices, isOfDevice } from './tables/device-ranges.js'
import { deviceInWords } from './tables/device-words.js'
import type { FoundRun } from './tables/runs.js'
import { joinContinued } from './tests/continued.js'
import { type Copy, copiesIn } from './tests/copies.js'
import { FANS, type Joined, joinFans } from './tests/fans.js'
import { meansOfRuns } from './tests/mean-runs.js'
import { type MeanOfSamples, meansOfSamples } from './tests/samples-beside.js'
import type { FoundSeries } from './tests/test-group.js'

/** All that a log holds, before its runs are parted into tests. */
export interface FoundInLog {
  readonly visible: readonly View[]
  /** Readings that a run needs by the method of the log. */
  readonly fewest: number
  readonly tables: readonly SheetTables[]
  readonly formOf: ReadonlyMap<View, FieldsOfSheet>
  readonly fields: readonly FoundField[]
  readonly devices: readonly FoundDevice[]
  readonly runs: readonly FoundRun[]
  readonly series: readonly FoundSeries[]
  readonly joined: readonly Joined[]
  /** Runs that stand twice. */
  readonly alike: readonly Copy[]
  readonly copies: readonly Copy[]
  readonly means: readonly FoundRun[]
  readonly sampled: readonly MeanOfSamples[]
  readonly unsearched: NotSearched
}

/** Sheets looked through; a firm's log has fewer. */
const MOST_SHEETS = 60

/** Looks through every sheet of a log for readings, values and devices. */
export function findInLog(grid: Grid, answers: Answers, decimal: '.' | ',' | undefined): FoundInLog {
  const sheets = grid.sheetNames
    .slice(0, MOST_SHEETS)
    .flatMap((name) => grid.sheet(name) ?? [])
    .filter(({ rows }) => rows > 0)
  const around = { date1904: grid.date1904, decimal }
  const whole = sheets.map((sheet) => viewOf(sheet, around))
  const visible = whole.filter(({ sheet }) => !sheet.hidden)
  const fewest = fewestReadings(methodOfLog(answers, visible))
  const unsearched = new NotSearched()
  const tables = tablesOf(whole, visible, answers, fewest, unsearched)
  unsearched.beyond(tables, grid.sheetNames.slice(MOST_SHEETS))
  const formOf = new Map(
    tables.map(({ view, isTaken }) => [
      view,
      fieldsOfSheet(view, isTaken, unsearched.of(view, 'labels with values')),
    ]),
  )
  const fields = [...formOf.values()].flatMap((form) => form.fields)
  const upright = findDevices(visible)
  const devices = upright.length > 0 || !hasDevicePressures(tables) ? upright : devicesOtherwise(visible)
  const each = joinContinued(
    tables.flatMap((one) => one.runs),
    fields,
  ).filter(
    ({ view, readings, block }) =>
      !isOfDevice(
        devices,
        view,
        readings.map(({ row }) => row),
        block.pressure.label,
      ),
  )
  const sampled = meansOfSamples(each)
  const samples = new Set(sampled.flatMap((one) => one.samples))
  const all = each
    .filter((run) => !samples.has(run))
    .map((run) => sampled.find(({ own }) => own === run)?.run ?? run)
  const alike = copiesIn(all, fields)
  const copies = alike.filter(({ ofOtherHouse }) => !ofOtherHouse)
  const means = meansOfRuns(all)
  const { runs, joined } = joinFans(
    all.filter((run) => !means.includes(run) && !copies.some((copy) => copy.run === run)),
    answers[FANS],
  )
  const series = tables.flatMap((one) => one.series)
  return {
    visible,
    fewest,
    tables,
    formOf,
    fields,
    devices,
    runs,
    series,
    joined,
    alike,
    copies,
    means,
    sampled,
    unsearched,
  }
}

/** Tables as they stand; where none has readings, in pairs or stacked, then without headings. */
function tablesOf(
  whole: readonly View[],
  visible: readonly View[],
  answers: Answers,
  fewest: number,
  unsearched: NotSearched,
): SheetTables[] {
  const once = whole.map((view) => sectionedView(view) ?? view)
  // One or two readings have no table: read across, the whole form would be one.
  const views = fewest > 2 ? once : once.map((view) => stackedView(view, fewest) ?? view)
  const tablesBelow = (of: readonly View[], heads?: typeof bareHeads) =>
    of.map((view) => findSheetTables(view, answers, unsearched.of(view, 'tables of readings'), fewest, heads))
  const isEmpty = (found: readonly SheetTables[]) =>
    found.every(({ runs: own, series: raw }) => own.length + raw.length === 0)
  const tables = tablesBelow(views)
  if (!isEmpty(tables)) return tables
  const parted = views.map((view) => pairedView(view) ?? stackedView(view, fewest) ?? view)
  const again = parted.some((view, index) => view !== views[index]) ? tablesBelow(parted) : tables
  const isLost = isEmpty(again) && !visible.some((view) => unstoredColumn(view))
  return isLost ? tablesBelow(parted, bareHeads) : again
}

const hasDevicePressures = (tables: readonly SheetTables[]): boolean =>
  tables.some(({ runs }) => runs.some(({ block }) => block.carriers[0]?.role === 'device'))

/** The coefficients across, or in words. */
function devicesOtherwise(views: readonly View[]): FoundDevice[] {
  const across = findDevices(views.map((view) => turned(view)))
  return across.length > 0 ? across : [deviceInWords(views) ?? []].flat()
}
