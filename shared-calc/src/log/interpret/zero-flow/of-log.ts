import type { FoundField } from '../fields/found-field.js'
import type { Mirrored } from '../grid/mirrored.js'
import type { View } from '../grid/view.js'
import type { NotSearched } from '../not-searched.js'
import type { SheetTables } from '../sheet-tables.js'
import type { FoundRun } from '../tables/runs.js'
import type { TestGroup } from '../tests/test-group.js'
import { numbersAroundWords } from './around-words.js'
import { type Assigned, assignZeroFlow } from './assign.js'
import type { Houses } from './by-runs.js'
import { zeroColumns } from './columns.js'
import type { ZeroEntry } from './entry.js'
import { isAbout, isNumbering } from './headings.js'
import { type Mention, mentionsOfZeroFlow } from './mentioned.js'
import { ofOneKind } from './of-one-kind.js'
import { zeroFlowOfSheet } from './of-sheet.js'
import { type Rival, rivalsOf } from './rivals.js'
import { unknownPressures } from './unlabelled.js'
import { unpairedPressures } from './unpaired-columns.js'
import { unusedZeroFlow } from './unused.js'

/** What speaks against the zero flow that was read for a run. */
export interface ZeroFlowDoubts {
  /** Texts that nothing was read from, with a value in or beside them: for a run that has none. */
  readonly mentions: readonly Mention[]
  /** Values that no run took, by the run each is nearest to. */
  readonly unused: readonly ZeroEntry[]
  /** Other ways to give what was found to the runs of the test. */
  readonly rivals: readonly Rival[]
}

/** The zero flow of a log: what each run takes, and what else it may be. */
export interface ZeroFlowOfLog {
  readonly assigned: Assigned
  /** Every labelled value. */
  readonly found: readonly ZeroEntry[]
  /** Small pressures by labels nobody knows, where the log seems to hold no zero flow. */
  readonly unknown: readonly ZeroEntry[]
  doubtsOf(run: FoundRun, group: TestGroup): ZeroFlowDoubts
  /** Labels of what was used for no run of a test and is no doubt. */
  namedFor(group: TestGroup): readonly Mention[]
}

interface Log {
  /** The tables that are shown, or hidden with a test that was chosen. */
  readonly tables: readonly SheetTables[]
  readonly visible: readonly View[]
  readonly runs: readonly FoundRun[]
  readonly chosen: readonly TestGroup[]
  readonly fields: readonly FoundField[]
  readonly unsearched: NotSearched
  mirroredOf(view: View): Mirrored | undefined
}

/** @param takesUnknown - whether somebody has said that values by unknown labels are zero flow */
export function zeroFlowOfLog(log: Log, takesUnknown: boolean): ZeroFlowOfLog {
  const { tables, chosen, fields } = log
  const own = chosen.flatMap((group) => group.runs)
  const runs = own.length > 0 ? log.runs.filter((run) => !run.hidden || own.includes(run)) : []
  const labelled = [
    ...tables.flatMap(({ view, isTaken, runs: ofSheet }) =>
      zeroFlowOfSheet(
        view,
        isTaken,
        log.unsearched.of(view, 'zero-flow pressures'),
        ofSheet,
        log.mirroredOf(view),
      ),
    ),
    ...zeroColumns(runs),
  ]
  const isWithout = own.length > 0 && labelled.length === 0 && own.every((run) => !hasZeroRows(run))
  const ofFields = new Set(fields.flatMap(({ cell, also = [] }) => [cell, ...also]))
  const ofAir = new Set(fields.flatMap(({ name, cell }) => (/temperature/i.test(name) ? cell : [])))
  const beside = isWithout ? own.flatMap(unpairedPressures) : []
  const labels = isWithout
    ? tables.flatMap(({ view, isTaken, runs: ofSheet }) =>
        unknownPressures(
          view,
          (row, column) => isTaken(row, column) || ofAir.has(view.address(row, column)),
          labelled,
          ofSheet,
        ),
      )
    : []
  const unknown = [...labels, ...beside]
  const years = yearsOf(fields)
  const tablesOf = new Map(tables.map((own) => [own.view, own]))
  const parted = [...labelled, ...(takesUnknown ? unknown : [])].map((entry) =>
    ofOneKind(entry, tablesOf.get(entry.view), years),
  )
  const found = parted.map(({ kept }) => kept)
  const taken = assignZeroFlow(
    runs,
    found.filter(({ label, figures }) => !isAbout(label) && !isNumbering(figures)),
    housesOf(runs, log.chosen, fields),
  )
  const read = new Set([
    ...[...labelled, ...found].flatMap(({ labelCell, figures }) => [
      labelCell,
      ...figures.map(({ cell }) => cell),
    ]),
    ...runs.flatMap(cellsOf),
  ])
  const mentioned = mentionsOfZeroFlow(log.visible, (cell) => read.has(cell))
  // Where some zero flow could not be read, that of one run is not shared: it may be the other's that was lost.
  const assigned: Assigned = new Map(
    [...taken].map(([run, state]) => [
      run,
      state.shared && mentioned.valued.length > 0 ? { shared: false } : state,
    ]),
  )
  const unread = tables.flatMap(({ view, isTaken }) =>
    numbersAroundWords(view, { isTaken, isRead: (cell) => read.has(cell) || ofFields.has(cell) }),
  )
  const { likely, others } = unusedZeroFlow(
    runs,
    [...found, ...parted.flatMap(({ rivals }) => rivals), ...unread],
    parted.flatMap((part) => part.others),
    assigned,
  )
  const mentions = unknown.length > 0 ? [] : [...mentioned.valued, ...found]
  const has = (run: FoundRun) => {
    const { before, after } = assigned.get(run) ?? {}
    return before !== undefined || after !== undefined || hasZeroRows(run)
  }
  return {
    assigned,
    found,
    unknown,
    doubtsOf: (run, group) => ({
      mentions,
      unused: likely.get(run) ?? [],
      rivals: rivalsOf(run, group.runs, assigned),
    }),
    namedFor: (group) => [
      ...others.flatMap(({ entry, nearest }) =>
        (nearest ? group.runs.includes(nearest) : group === chosen[0]) ? entry : [],
      ),
      ...(group.runs.every(has) || chosen.length > 1 ? [] : mentioned.bare),
    ],
  }
}

const hasZeroRows = ({ zeroBefore, zeroAfter }: FoundRun): boolean => zeroBefore.length + zeroAfter.length > 0

/** Names of sheets, buildings and tests with the runs that they have, where there are several. */
function housesOf(
  runs: readonly FoundRun[],
  groups: readonly TestGroup[],
  fields: readonly FoundField[],
): Houses {
  const onSheet = (name: string) => runs.filter(({ view }) => view.name === name)
  const sheets = new Set(runs.map(({ view }) => view.name))
  const named = fields.flatMap(({ name, content, view }) =>
    name === 'name' && content.kind === 'text' ? [[content.text, onSheet(view.name)] as const] : [],
  )
  return new Map([
    ...(sheets.size > 1 ? [...named, ...[...sheets].map((name) => [name, onSheet(name)] as const)] : []),
    ...(groups.length > 1 ? groups.map(({ key, runs: own }) => [key, own] as const) : []),
  ])
}

/** Years of the dates that the log states. */
const yearsOf = (fields: readonly FoundField[]): string[] =>
  fields.flatMap(({ name, content }) =>
    name === 'date' && content.kind === 'date' ? content.dates.map((date) => date.slice(0, 4)) : [],
  )

/** Cells of the readings of a run, and the heading of its pressures unless it may state a value. */
const cellsOf = ({ block, readings, zeroBefore, zeroAfter }: FoundRun): string[] => [
  ...(/\d/.test(block.pressure.label.text) ? [] : [block.pressure.headingCell]),
  ...[...zeroBefore, ...zeroAfter].map(({ cell }) => cell),
  ...readings.flatMap(({ pressure, carriers }) => [
    pressure.cell,
    ...carriers.flatMap((one) => one?.cell ?? []),
  ]),
]
