import { questions } from '../../../catalogue/questions.js'
import { plain } from '../../../catalogue/words.js'
import { shown, toRecordUnit } from '../../cells/units.js'
import { TOGETHER } from '../tables/choose.js'
import type { Doubt, KnownColumn } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'
import type { ResultAt50 } from './results-at-50.js'

/** A result of the log agrees so well with the columns it was worked out from, zero flow and air apart. */
const AGREES = 0.03
/** With columns that are off by more it was not. */
const CONTRADICTS = 0.1

/**
 * Asks which of several columns is meant, with the flow at 50 Pa that each gives: where words and the curve leave it open, and where a
 * result of the log itself agrees with other columns than those chosen.
 */
export function askColumns(draft: Draft, runs: readonly FoundRun[], results: readonly ResultAt50[]): void {
  const doubts = runs.flatMap(({ block }) =>
    block.doubts.map((doubt) => ({ doubt, carrier: block.carriers[0] })),
  )
  if (doubts.length === 0) doubts.push(...doubtsByResults(runs, results))
  for (const { doubt, carrier } of doubts) {
    const { about, columns, exchanged, at50 } = doubt
    const path = `${about}.column`
    if (draft.answers[path] !== undefined) continue
    const cells = columns.map(({ headingCell }) => headingCell)
    const [first, second] = columns
    if (doubt.unitsExchanged && first?.unit && second?.unit) {
      const [own, other] = [shown(first.unit.unit), shown(second.unit.unit)]
      if (draft.answers['flow.unit'] === undefined)
        draft.ask({ path: 'flow.unit', cells, ...questions.flowUnitsExchanged({ cells, own, other }) })
      continue
    }
    if (exchanged && first && second) {
      const labels = { pressures: first.label.text, flows: second.label.text }
      draft.ask({ path, cells, ...questions.exchangedColumns(labels) })
      continue
    }
    draft.ask({
      path,
      cells,
      ...questions.column({
        about,
        together: about === 'flow' && alike(columns) ? TOGETHER : undefined,
        columns: columns.map((column, index) => ({
          value: distinct(columns) ? column.label.text : column.headingCell,
          label: `${named(column)}${gives(at50?.[index], about === 'flow' ? column : carrier)}`,
        })),
      }),
    })
  }
}

const named = ({ headingCell, label, unit }: KnownColumn): string =>
  `${headingCell}${label.text ? ` "${label.text}"` : ''}${unit ? ` in ${shown(unit.unit)}` : ''}`

/** ", 312 m³/h at 50 Pa" */
function gives(at50: number | undefined, flow: KnownColumn | undefined): string {
  if (at50 === undefined || flow?.unit?.kind !== 'flow') return ''
  return `, ${plain(toRecordUnit(at50, flow.unit), 0)} m³/h at 50 Pa`
}

/** Other columns, the same in every run, which alone give a result that the log records. */
function doubtsByResults(
  runs: readonly FoundRun[],
  results: readonly ResultAt50[],
): { doubt: Doubt; carrier: KnownColumn | undefined }[] {
  const [first] = runs
  if (!first || results.length === 0) return []
  const chosen = first.block.tried[0]
  const far = (flow: number | undefined) =>
    flow !== undefined && results.every((result) => Math.abs(flow / result.flow - 1) > CONTRADICTS)
  if (!chosen || !far(meanWith(runs, chosen))) return []
  const other = first.block.tried.slice(1).find((one) => {
    const flow = meanWith(runs, one)
    return flow !== undefined && results.some((result) => Math.abs(flow / result.flow - 1) < AGREES)
  })
  if (!other) return []
  const about = other.pressure === chosen.pressure ? 'flow' : 'pressure'
  const columns =
    about === 'flow' ? [...chosen.carriers, ...other.carriers] : [chosen.pressure, other.pressure]
  const at50 = columns.length === 2 ? { at50: [chosen.law?.at50, other.law?.at50] } : {}
  return [{ doubt: { about, columns, ...at50 }, carrier: chosen.carriers[0] }]
}

/** Mean flow at 50 Pa of all runs with columns of these headings, m³/h; undefined where a run has none. */
function meanWith(runs: readonly FoundRun[], { pressure, carriers }: FoundRun['block']['tried'][number]) {
  const key = (columns: readonly KnownColumn[]) => columns.map(({ label }) => label.text).join('|')
  const flows = runs.flatMap(({ block }): number[] => {
    const own = block.tried.find(
      (one) => key([one.pressure, ...one.carriers]) === key([pressure, ...carriers]),
    )
    const unit = own?.carriers[0]?.unit
    return own?.law && unit?.kind === 'flow' ? [toRecordUnit(own.law.at50, unit)] : []
  })
  return flows.length < runs.length ? undefined : flows.reduce((sum, one) => sum + one, 0) / flows.length
}

const distinct = (columns: readonly KnownColumn[]): boolean =>
  new Set(columns.map(({ label }) => label.text)).size === columns.length &&
  columns.every(({ label }) => label.text !== '')

/** A number or letter that tells one fan from another. */
const MARK = /^([1-9]|[ab])$/

/** Headings that differ by a number or letter only, and do differ. */
const alike = (columns: readonly KnownColumn[]): boolean => {
  const words = columns.map(
    ({ label, unit }) => `${label.tokens.filter((token) => !MARK.test(token)).join(' ')}|${unit?.unit}`,
  )
  const marks = columns.map(({ label }) => label.tokens.find((token) => MARK.test(token)))
  return new Set(words).size === 1 && !marks.includes(undefined) && new Set(marks).size === columns.length
}
