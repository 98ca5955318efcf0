import { fileText } from '../../catalogue/findings/log/file.js'
import { runText } from '../../catalogue/findings/log/runs.js'
import { questions as texts } from '../../catalogue/questions.js'
import { formatNeeded } from '../../contract/record/index.js'
import type { Grid } from '../grid/grid.js'
import type { FoundField } from './fields/found-field.js'
import { fieldsOver, type NamedRow, namedRowsOf, roomsOf } from './fields/lists.js'
import { sidesIn } from './fields/sides.js'
import { unreadTemperatureIn } from './fields/unread-temperature.js'
import { unreadVolumeIn } from './fields/unread-volume.js'
import type { FoundInLog } from './found-in-log.js'
import type { UnstoredField } from './grid/unstored.js'
import { turned } from './grid/view.js'
import type { Answers, InterpretedTest, Question, Use } from './interpretation.js'
import { answersWithoutFields } from './record/before.js'
import { beforeAnswers } from './record/before-answers.js'
import { putConditions } from './record/conditions.js'
import { putDetails } from './record/details.js'
import { Draft } from './record/draft.js'
import { finished } from './record/finished.js'
import { putInstruments } from './record/instruments.js'
import { putRuns } from './record/put-runs.js'
import { putSeries } from './record/put-series.js'
import { putSizes, type Rooms, volumeUnitQuestion } from './record/sizes.js'
import { putTarget } from './record/stated-target.js'
import type { FoundRun } from './tables/runs.js'
import { askYear } from './tests/chosen.js'
import { tellDirectionAgain } from './tests/direction-again.js'
import { FANS, isTogether, type Joined } from './tests/fans.js'
import { beginsWith, isSameName, isTitleOf } from './tests/names-of-tests.js'
import { type FieldScope, scopeOf } from './tests/scope.js'
import type { TestGroup } from './tests/test-group.js'
import type { Habits } from './words/habits.js'
import type { ZeroEntry } from './zero-flow/entry.js'
import type { ZeroFlowOfLog } from './zero-flow/of-log.js'

/** What the log says, for each of its tests. */
export interface LogOfTests {
  readonly grid: Grid
  readonly answers: Answers
  readonly fileDate: string | undefined
  readonly found: FoundInLog
  readonly groups: readonly TestGroup[]
  /** Values in the lines of a list, by the run that a line holds. */
  readonly rowFields: ReadonlyMap<FoundRun, readonly FoundField[]>
  /** Lists with a line or a column for each test. */
  readonly houses: readonly NamedRow[]
  readonly rooms: Rooms | undefined
  readonly zeroFlow: ZeroFlowOfLog
  readonly habits: Habits
  readonly unstored: readonly UnstoredField[]
}

export type TestWithUses = InterpretedTest & { readonly uses: readonly Use[] }

/** Lists of houses that a log has, and the rooms of one. */
export function listsIn({ tables }: FoundInLog, groups: readonly TestGroup[]) {
  const isTest = (name: string) =>
    groups.some((group) => isSameName(name, group.key) || isTitleOf(name, group, groups))
  const shown = tables.filter(({ view }) => !view.sheet.hidden)
  const houses = shown.flatMap(({ view, isTaken }) => [
    ...namedRowsOf(view, isTaken, isTest),
    // The same list with a column for each house.
    ...namedRowsOf(turned(view), (row, column) => isTaken(column, row), isTest),
  ])
  return { houses, rooms: shown.map(({ view, isTaken }) => roomsOf(view, isTaken)).find((one) => one) }
}

/** One test of a log, put together from what was found. */
export function testOf(group: TestGroup, log: LogOfTests): TestWithUses {
  const { grid, answers, found, groups, rowFields, unstored } = log
  const house = houseOf(group, log)
  const ofHouse = house?.fields ?? []
  const listed = ofHouse.filter((field) => !isOnOwnSheet(field, group, log))
  const others = groups.filter((one) => one !== group).flatMap((one) => one.runs)
  const ofRows = [
    ...group.runs.flatMap((run) => rowFields.get(run) ?? []),
    ...listed,
    ...fieldsOver(group.runs, others),
  ]
  const scope = scopeOf(group, groups, found.fields, ofRows)
  const own = answersWithoutFields(answers)
  const fill = (draft: Draft) => filled(draft, group, scope, house, log)
  const before = own && beforeAnswers(fill(new Draft(own, unstored)))
  return finished(fill(new Draft(answers, unstored, before)), group, scope, grid)
}

/** The line of a list that names the test. */
const houseOf = (group: TestGroup, { houses, groups }: LogOfTests): NamedRow | undefined =>
  houses.find(({ name }) => isSameName(name, group.key) || beginsWith(group.key, name)) ??
  houses.find(({ name }) => isTitleOf(name, group, groups))

/** A sheet of its own says more of a test than its line in an overview. */
const isOnOwnSheet = (field: FoundField, group: TestGroup, { found, groups }: LogOfTests): boolean =>
  found.fields.some(
    ({ name, view }) =>
      name === field.name &&
      view.name !== field.view.name &&
      group.runs.every((run) => run.view.name === view.name) &&
      groups.every((one) => one === group || one.runs.every((run) => run.view.name !== view.name)),
  )

function filled(
  draft: Draft,
  group: TestGroup,
  scope: FieldScope,
  house: NamedRow | undefined,
  log: LogOfTests,
): Draft {
  const { grid, answers, fileDate, found, groups, rooms, zeroFlow, habits } = log
  const { visible, alike, devices, joined, fewest } = found
  const { american, dayFirst } = habits
  const ofHouse = house?.fields ?? []
  putDetails(draft, scope, {
    fileName: grid.fileName,
    fileDate,
    american,
    dayFirst,
    key: house?.name ?? group.key,
    several: groups.length > 1,
    listed: ofHouse.length > 0 && !ofHouse.some(({ name }) => name === 'name' || name === 'address'),
    views: visible,
  })
  if (answers.test === undefined) askYear(draft, group, groups)
  // Of several tests the words may be those of another.
  const ownViews = groups.length > 1 ? [] : visible
  putConditions(draft, scope, group.runs, (side) =>
    unreadTemperatureIn(ownViews, side === 'indoor' ? 'inside' : 'outside'),
  )
  const offered = { rooms, sides: () => sidesIn(visible), unread: () => unreadVolumeIn(visible) }
  const volume = putSizes(draft, scope, offered, american)
  putRuns(draft, group.runs, {
    grid,
    scope,
    zeroFlow,
    group,
    copied: alike.filter(({ ofOtherHouse }) => ofOtherHouse),
    devices,
    volume,
    american,
    forms: ownViews,
  })
  if (zeroFlow.unknown.length > 0 && answers['zeroFlow.labels'] === undefined)
    draft.ask(unknownQuestion(zeroFlow.unknown))
  const fans = joined.filter(({ run, isCertain }) => group.runs.includes(run) && !isCertain)
  if (fans.length > 0 && !isTogether(answers[FANS])) draft.ask(fansQuestion(fans))
  if (group.refusedBy)
    draft.tell(
      fileText('log-refused-test/read', { title: group.refusedBy.title }),
      group.refusedBy.cell,
      'runs',
    )
  for (const { label, labelCell } of zeroFlow.namedFor(group))
    draft.tell(runText('log-zero-unused', { label }), labelCell, 'runs')
  tellDirectionAgain(draft, group, groups)
  if (volume.open) draft.ask(volumeUnitQuestion(volume.open, american))
  putSeries(draft, grid, group, fewest)
  putInstruments(draft, scope)
  putTarget(draft, scope)
  draft.put('format', formatNeeded(draft.record))
  return draft
}

function fansQuestion(joined: readonly Joined[]): Question {
  const cells = joined[0]?.parts.map(({ block }) => block.carriers[0]?.headingCell ?? '') ?? []
  return { path: FANS, cells, ...texts.fans({ columns: cells }) }
}

function unknownQuestion(unknown: readonly ZeroEntry[]): Question {
  const labels = [...new Set(unknown.map(({ label }) => label))].slice(0, 4)
  return {
    path: 'zeroFlow.labels',
    cells: unknown.map(({ figures }) => figures[0]?.cell ?? ''),
    ...texts.zeroFlowLabels({ labels }),
  }
}
