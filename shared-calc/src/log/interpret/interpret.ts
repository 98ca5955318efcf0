import { fileText } from '../../catalogue/findings/log/file.js'
import { runText } from '../../catalogue/findings/log/runs.js'
import { questions as texts } from '../../catalogue/questions.js'
import { formatNeeded } from '../../contract/record/index.js'
import { fewestReadings } from '../../methods/method.js'
import { decimalOf, tellMixedDecimals } from '../grid/decimal.js'
import type { Grid } from '../grid/grid.js'
import { openLog } from '../open-log.js'
import { problem } from '../problem.js'
import { readAnswers } from './answers.js'
import type { FieldName } from './fields/classify.js'
import { tellFormer } from './fields/former-columns.js'
import type { FoundField } from './fields/found-field.js'
import { fieldsOfSheet } from './fields/labels-behind.js'
import { fieldsOver, namedRowsOf, roomsOf } from './fields/lists.js'
import { fieldsOfRun } from './fields/of-run.js'
import { sidesIn, unreadVolumeIn } from './fields/sides.js'
import { pairedView } from './grid/paired-view.js'
import { stackedView } from './grid/stacked-view.js'
import { tellUnstored, unstoredColumn, unstoredFields } from './grid/unstored.js'
import { turned, type View, viewOf } from './grid/view.js'
import type { Answers, Interpretation, InterpretedTest, Question, Use } from './interpretation.js'
import { NotSearched } from './not-searched.js'
import { nothingFound } from './nothing-found.js'
import { answersWithoutFields, type Before } from './record/before.js'
import { putConditions } from './record/conditions.js'
import { putDetails } from './record/details.js'
import { Draft } from './record/draft.js'
import { finished } from './record/finished.js'
import { methodOfLog } from './record/method.js'
import { putRuns } from './record/put-runs.js'
import { putSeries } from './record/put-series.js'
import { putSizes, volumeUnitQuestion } from './record/sizes.js'
import { findSheetTables, type SheetTables } from './sheet-tables.js'
import { bareHeads } from './tables/bare-heads.js'
import { type FoundDevice, findDevices, isOfDevice } from './tables/device-ranges.js'
import { deviceInWords } from './tables/device-words.js'
import type { FoundRun } from './tables/runs.js'
import { askYear, chooseTest } from './tests/chosen.js'
import { joinContinued } from './tests/continued.js'
import { copiesIn, tellCopies } from './tests/copies.js'
import { tellDirectionAgain } from './tests/direction-again.js'
import { FANS, isTogether, type Joined, joinFans } from './tests/fans.js'
import { groupTests, valueText } from './tests/group.js'
import { leftOutTests } from './tests/left-out.js'
import { meansOfRuns, tellMeans } from './tests/mean-runs.js'
import { scopeOf } from './tests/scope.js'
import type { TestGroup } from './tests/test-group.js'
import { unreadValues } from './unread-values.js'
import { habitsOf } from './words/habits.js'
import { readLabel } from './words/label.js'
import type { ZeroEntry } from './zero-flow/entry.js'
import { zeroFlowOfLog } from './zero-flow/of-log.js'

export interface InterpretOptions {
  /** Answers to questions, by path, as typed. */
  readonly answers?: Answers
  /** Day the file was last changed, YYYY-MM-DD: taken, with a caution, where the log states no date. */
  readonly fileDate?: string
}

/** Sheets looked through; a firm's log has fewer. */
const MOST_SHEETS = 60

/**
 * Reads a log nobody has described: finds its tests, and for each either a whole record or the questions that are open.
 * @param log - the file's bytes with its name, or a grid that is open already
 * @throws LogError where the file cannot be opened
 */
export function interpretLog(
  log: Grid | { readonly bytes: Uint8Array; readonly fileName: string },
  options: InterpretOptions = {},
): Interpretation {
  const { answers, problems } = readAnswers(options.answers ?? {})
  const decimal = answers.decimal === ',' || answers.decimal === '.' ? answers.decimal : undefined
  const grid = 'bytes' in log ? openLog(log.bytes, log.fileName, decimal) : log
  const sheets = grid.sheetNames
    .slice(0, MOST_SHEETS)
    .flatMap((name) => grid.sheet(name) ?? [])
    .filter(({ rows }) => rows > 0)
  const around = { date1904: grid.date1904, decimal: decimal ?? decimalOf(grid) }
  const whole = sheets.map((sheet) => viewOf(sheet, around))
  const visible = whole.filter(({ sheet }) => !sheet.hidden)
  const fewest = fewestReadings(methodOfLog(answers, visible))
  // One or two readings have no table: read across, the whole form would be one.
  const views = fewest > 2 ? whole : whole.map((view) => stackedView(view, fewest) ?? view)
  const unsearched = new NotSearched()
  const tablesBelow = (of: readonly View[], heads?: typeof bareHeads) =>
    of.map((view) => findSheetTables(view, answers, unsearched.of(view, 'tables of readings'), fewest, heads))
  const isEmpty = (found: readonly SheetTables[]) =>
    found.every(({ runs: own, series: raw }) => own.length + raw.length === 0)
  let tables = tablesBelow(views)
  if (isEmpty(tables)) {
    const parted = views.map((view) => pairedView(view) ?? stackedView(view, fewest) ?? view)
    if (parted.some((view, index) => view !== views[index])) tables = tablesBelow(parted)
    if (isEmpty(tables) && !visible.some((view) => unstoredColumn(view)))
      tables = tablesBelow(parted, bareHeads)
  }
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
  const all = joinContinued(
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
  const alike = copiesIn(all, fields)
  const copies = alike.filter(({ ofOtherHouse }) => !ofOtherHouse)
  const means = meansOfRuns(all)
  const { runs, joined } = joinFans(
    all.filter((run) => !means.includes(run) && !copies.some((copy) => copy.run === run)),
    answers[FANS],
  )
  const series = tables.flatMap((one) => one.series)
  if (runs.length + series.length === 0)
    return {
      tests: [],
      questions: [],
      uses: [],
      findings: [...grid.findings, ...unsearched.findings()],
      problems: [...problems, nothingFound(visible, answers)],
    }
  const rowFields = new Map(runs.map((run) => [run, fieldsOfRun(run)]))
  const groups = groupTests(runs, series, fields, {
    keyOf: (run) => keyOfRow(rowFields.get(run) ?? [], run),
    isOfSame: (one, other) => isOfSameTest(rowFields.get(one) ?? [], rowFields.get(other) ?? []),
  })
  const wanted = answers.test
  const shown = groups.filter(({ hidden }) => !hidden)
  const counting = shown.filter(({ refusedBy }) => !refusedBy)
  const candidates = [counting, shown, groups].find((list) => list.length > 0) ?? []
  const buildingOf = (group: (typeof groups)[number]) => {
    const [field] = scopeOf(group, groups, fields, []).all('name')
    return field && valueText(field)
  }
  const chosen = wanted === undefined ? candidates : chooseTest(groups, wanted, buildingOf)
  if (!chosen)
    return {
      tests: [],
      questions: [],
      uses: [],
      findings: grid.findings,
      problems: [
        problem(
          'not-found',
          `this log has no test "${wanted}": choose one of ${groups.map(({ key }) => `"${key}"`).join(', ')}`,
          { path: 'test' },
        ),
      ],
    }
  const { american, dayFirst } = habitsOf(visible)
  const isTest = (name: string) =>
    groups.some((group) => isSameName(name, group.key) || isTitleOf(name, group, groups))
  const houses = tables
    .filter(({ view }) => !view.sheet.hidden)
    .flatMap(({ view, isTaken }) => [
      ...namedRowsOf(view, isTaken, isTest),
      // The same list with a column for each house.
      ...namedRowsOf(turned(view), (row, column) => isTaken(column, row), isTest),
    ])
  const shownTables = tables.filter(({ view }) => !view.sheet.hidden || chosen.some(({ hidden }) => hidden))
  const zeroFlow = zeroFlowOfLog(
    {
      tables: shownTables,
      visible,
      runs,
      chosen,
      fields,
      unsearched,
      mirroredOf: (view) => formOf.get(view)?.mirrored,
    },
    answers['zeroFlow.labels'] === 'zero flow',
  )
  const rooms = tables
    .filter(({ view }) => !view.sheet.hidden)
    .map(({ view, isTaken }) => roomsOf(view, isTaken))
    .find((one) => one)
  const unstored = visible.flatMap(unstoredFields)
  const tests = chosen.map((group): InterpretedTest & { uses: readonly Use[] } => {
    const house =
      houses.find(({ name }) => isSameName(name, group.key) || beginsWith(group.key, name)) ??
      houses.find(({ name }) => isTitleOf(name, group, groups))
    // A sheet of its own says more of a test than its line in an overview.
    const isOnOwnSheet = (field: FoundField) =>
      fields.some(
        ({ name, view }) =>
          name === field.name &&
          view.name !== field.view.name &&
          group.runs.every((run) => run.view.name === view.name) &&
          groups.every((one) => one === group || one.runs.every((run) => run.view.name !== view.name)),
      )
    const ofHouse = house?.fields ?? []
    const listed = ofHouse.filter((field) => !isOnOwnSheet(field))
    const others = groups.filter((one) => one !== group).flatMap((one) => one.runs)
    const ofRows = [
      ...group.runs.flatMap((run) => rowFields.get(run) ?? []),
      ...listed,
      ...fieldsOver(group.runs, others),
    ]
    const scope = scopeOf(group, groups, fields, ofRows)
    const fill = (draft: Draft): Draft => {
      putDetails(draft, scope, {
        fileName: grid.fileName,
        fileDate: options.fileDate,
        american,
        dayFirst,
        key: house?.name ?? group.key,
        several: groups.length > 1,
        listed: ofHouse.length > 0 && !ofHouse.some(({ name }) => name === 'name' || name === 'address'),
        views: visible,
      })
      if (wanted === undefined) askYear(draft, group, groups)
      putConditions(draft, scope, group.runs)
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
      const target = draft.answered('target.preset')
      if (target !== undefined) draft.put('target.preset', target)
      draft.put('format', formatNeeded(draft.record))
      return draft
    }
    const own = answersWithoutFields(answers)
    const before = own && beforeAnswers(fill(new Draft(own, unstored)))
    const draft = fill(new Draft(answers, unstored, before))
    return finished(draft, group, scope, grid)
  })
  const ofChosen = new Set(chosen.flatMap((group) => group.runs))
  const lost = unreadValues(
    tables.filter((table) => groups.length === chosen.length || table.runs.every((run) => ofChosen.has(run))),
    tests.flatMap(({ uses }) => uses),
    [
      ...fields.flatMap(({ cell, also = [] }) => [cell, ...also]),
      ...zeroFlow.found.flatMap(({ figures }) => figures.map(({ cell }) => cell)),
      ...[...formOf.values()].flatMap(({ former }) => former.flatMap(({ cells }) => cells)),
      ...tests.flatMap(({ cells, findings }) => [
        ...Object.values(cells),
        ...findings.flatMap((finding) => finding.cells ?? []),
      ]),
    ],
  )
  return {
    tests: tests.map(({ uses: _, ...test }) => test),
    questions: uniqueQuestions(tests.flatMap(({ questions }) => questions)),
    uses: tests.flatMap(({ uses }) => uses),
    findings: [
      ...grid.findings,
      ...(decimal ? [] : tellMixedDecimals(grid)),
      ...unsearched.findings(),
      ...tellCopies(copies),
      ...tellMeans(means),
      ...[...formOf.values()].flatMap(({ former }) => tellFormer(former)),
      ...leftOutTests(groups, chosen),
      ...tellUnstored(unstored),
      ...lost,
    ],
    problems,
  }
}

/** What a log has of its own: of a field that it leaves open, nothing. */
function beforeAnswers({ record, collector, questions }: Draft): Before {
  const cells = { ...collector.cells }
  const known = structuredClone(record) as Record<string, Record<string, unknown>>
  for (const { path } of questions) {
    const [part = '', name = ''] = path.split('.', 2)
    delete known[part]?.[name]
  }
  return { record: known, cells }
}

const hasDevicePressures = (tables: readonly SheetTables[]): boolean =>
  tables.some(({ runs }) => runs.some(({ block }) => block.carriers[0]?.role === 'device'))

/** The coefficients across, or in words. */
function devicesOtherwise(views: readonly View[]): FoundDevice[] {
  const across = findDevices(views.map((view) => turned(view)))
  return across.length > 0 ? across : [deviceInWords(views) ?? []].flat()
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

/** Lines at the top of a sheet in which its title stands. */
const TITLE_ROWS = 3

/** "Plot 7" alone in the first lines of sheet "P7", which no other test is on: the list of plots calls the test so. */
const isTitleOf = (name: string, group: TestGroup, groups: readonly TestGroup[]): boolean => {
  const [first] = group.runs
  const isOwn =
    first !== undefined &&
    groups.length > 1 &&
    groups.every((one) => one === group || one.runs.every(({ view }) => view.name !== first.view.name))
  if (!isOwn) return false
  const { held } = first.view
  return Array.from({ length: TITLE_ROWS }, (_, row) => held(row, 0)).some(
    (content) => content?.kind === 'text' && isSameName(content.text, name),
  )
}

/** "House 1 – depressurisation" is a table of house 1. */
const beginsWith = (key: string, name: string): boolean =>
  /\p{L}/u.test(name) && readLabel(key).padded.startsWith(readLabel(name).padded)

const isSameName = (one: string, other: string): boolean => readLabel(one).padded === readLabel(other).padded

/** Two lines of a list name the same house, and no value of the house or day in them differs. */
function isOfSameTest(one: readonly FoundField[], other: readonly FoundField[]): boolean {
  const of = (fields: readonly FoundField[], name: FieldName) => {
    const field = fields.find((each) => each.name === name)
    return field && valueText(field)
  }
  const names = (['name', 'address'] as const).map((name) => [of(one, name), of(other, name)] as const)
  return (
    names.some(([first]) => first !== undefined) &&
    names.every(([first, second]) => first === second) &&
    (['date', 'volume', 'envelopeArea'] as const).every((name) => of(one, name) === of(other, name))
  )
}

/** The name a row of a list has: its number, or its house. */
function keyOfRow(fields: readonly FoundField[], run: FoundRun): string | undefined {
  if (run.row === undefined) return undefined
  for (const name of ['testId', 'name', 'address'] as const) {
    const field = fields.find((one) => one.name === name)
    if (field?.content.kind === 'text') return field.content.text
    if (field?.content.kind === 'number') return String(field.content.written.value)
  }
  return undefined
}

const uniqueQuestions = (questions: readonly Question[]): Question[] => {
  const found = new Map<string, Question>()
  for (const question of questions) {
    const known = found.get(`${question.path}|${question.text}`)
    found.set(
      `${question.path}|${question.text}`,
      known ? { ...known, cells: [...new Set([...known.cells, ...question.cells])] } : question,
    )
  }
  return [...found.values()]
}
