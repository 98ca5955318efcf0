import { columnReasons } from '../../../catalogue/findings/log/runs.js'
import { shown } from '../../cells/units.js'
import { columnLetters } from '../../grid/address.js'
import type { SeriesLayout } from '../../layout/schema.js'
import { placeInSheet } from '../grid/lines.js'
import type { View } from '../grid/view.js'
import type { Use } from '../interpretation.js'
import { type KnownColumn, roleOf } from '../tables/columns.js'
import { findHeads, type Head } from '../tables/heads.js'

/** The columns of a gauge's own time log, by their headings. */
export interface SeriesColumns {
  readonly head: Head
  readonly all: readonly KnownColumn[]
  readonly time?: KnownColumn
  readonly pressure?: KnownColumn
  readonly flow?: KnownColumn
  readonly device?: KnownColumn
  /** The log's own marker of each step. */
  readonly steps?: KnownColumn
}

const LOOK = 40

/** @param top - row of the headings */
export function seriesColumns(view: View, top: number): SeriesColumns | undefined {
  const head = findHeads(view).find((one) => one.top === top)
  if (!head) return undefined
  const all = head.columns.map((column) => roleOf(view, head.first, head.first + LOOK, column))
  const of = (...roles: KnownColumn['role'][]) =>
    roles.map((role) => all.find((column) => column.role === role)).find(Boolean)
  const time = all.find(isTime) ?? all[0]
  const pressure = of('pressure', 'induced')
  const flow = of('flow', 'corrected')
  const device = of('device')
  return {
    head,
    all,
    ...(time && { time }),
    ...(pressure && { pressure }),
    ...(flow && { flow }),
    ...(device && { device }),
    ...stepsIn(all.filter((one) => ![time, pressure, flow, device].includes(one))),
  }
}

/** "Marker", "Event", "Stufe": what a logger writes beside the samples of a step. */
const OF_STEPS =
  /^(?:markers?|marks?|marke|markierung|events?|ereignis|steps?|stufe|phase|repere|evenement|etape|palier|stap|merker|gebeurtenis|steg|trin|trinn|krok|znacznik|paso|evento|marcador|passo|marcatore|stage)$/

function stepsIn(columns: readonly KnownColumn[]): { steps?: KnownColumn } {
  const steps = columns.filter(
    ({ unit, label, role }) => !unit && role !== 'time' && label.tokens.some((token) => OF_STEPS.test(token)),
  )
  const [only] = steps
  return only && steps.length === 1 ? { steps: only } : {}
}

export const isTime = ({ role, unit, label }: KnownColumn): boolean =>
  role === 'time' || unit?.kind === 'time' || label.tokens.includes('time')

/** Where a column of a series stands, from its first number to the end of the sheet; with its unit where one is stated. */
export function seriesColumn(
  { view, first }: Head,
  { at, unit }: KnownColumn,
  kind: 'time' | 'pressure' | 'flow',
  otherwise?: string,
): SeriesLayout['time'] {
  const place = placeInSheet(view.lines, first, at)
  const letters = columnLetters(place.column)
  const range = `${letters}${place.row + 1}:${letters}${view.sheet.rows}`
  const stated = unit?.kind === kind ? shown(unit.unit) : otherwise
  return { at: { range, sheet: view.name }, ...(stated === undefined ? {} : { unit: stated }) }
}

/** What each column of a series was used as. */
export function seriesUses({ head, all, time, pressure, flow, device, steps }: SeriesColumns): Use[] {
  const { view, first } = head
  const carrier = flow ?? device
  return all.map((column): Use => {
    const cells = view.address(first, column.at)
    const usedAs =
      column === pressure
        ? 'pressure across the building'
        : column === carrier
          ? column === flow
            ? 'air flow'
            : 'device pressure'
          : column === time
            ? 'time'
            : column === steps
              ? 'markers of the steps'
              : undefined
    const heading = column.label.text
    return usedAs === undefined
      ? { cells, heading, ignoredBecause: columnReasons.notNeeded }
      : {
          cells: `${cells}:${columnLetters(placeInSheet(view.lines, first, column.at).column)}${view.sheet.rows}`,
          heading,
          usedAs: `raw series: ${usedAs}`,
          path: 'runs',
        }
  })
}
