import { outcomeWords } from '../catalogue/words.js'
import { type Evaluation, parseRecord, pathText, type TestRecord } from '../contract/record/index.js'
import { placeUnit, placeWords } from '../contract/record/place-words.js'
import type { Grid } from '../log/grid/grid.js'
import { type Leaf, leavesOf } from '../reports/workbook/leaves.js'
import type { Places } from '../reports/workbook/places.js'
import type { RunnableVersion } from '../versions/version.js'
import { RECALCULATED_ZERO } from './agreement.js'
import { compareEvaluations } from './compare-evaluations.js'
import { compareSheets } from './compare-sheets.js'
import type { IssuedFile } from './issued-file.js'
import { type Field, withFields } from './issued-record.js'
import type { Difference } from './report.js'
import { expectedOnSheets, type RunAgain, runAgain } from './run-again.js'

interface Changed {
  readonly keys: Leaf['keys']
  readonly path: string
  readonly issued: Field
  readonly now: Field
}

interface Context {
  /** Where the figures stand in the workbook as issued. */
  readonly places?: Places
  readonly version: RunnableVersion
  readonly record: TestRecord
  readonly again: RunAgain
  readonly recorded: Evaluation
}

/**
 * One line for each changed field, with the figures that follow from it under it.
 * @param cellOf - where the file holds the field
 */
export function changedFields(
  changed: readonly { readonly path: string; readonly issued: Field; readonly now: Field }[],
  context: Context,
  cellOf: (path: string) => string | undefined,
): Difference[] {
  const byPath = new Map(leavesOf(context.record).map(({ keys }) => [pathText(keys), keys]))
  return changed.map(({ path, issued, now }) => {
    const keys = byPath.get(path) ?? []
    const cell = cellOf(path)
    const unit = placeUnit(path)
    return {
      kind: 'input',
      label: placeWords(path, context.record),
      path,
      ...(cell !== undefined && { cell }),
      ...(unit && { unit }),
      recorded: now,
      expected: issued,
      ...(typeof now === 'number' && typeof issued === 'number' && { change: now - issued }),
      rounding: false,
      follows: followers({ keys, path, issued, now }, context),
    }
  })
}

/** What the figures become when one field alone is changed. */
function followers(
  { keys, now }: Changed,
  { version, record, again, recorded, places }: Context,
): Difference[] {
  try {
    // A value that no record may hold gives no figures.
    const changed = parseRecord(withFields(record, [{ keys, value: now }]))
    const other = runAgain(version, changed, recorded)
    const { differences } = compareEvaluations(again.evaluation, other.evaluation, other.test, places)
    const figures = differences
      .filter(({ kind, rounding }) => kind === 'figure' && !rounding)
      .map(({ recorded: issued, expected: recalculated, ...figure }) => ({
        ...figure,
        recorded: issued,
        expected: recalculated,
        ...(typeof issued === 'number' &&
          typeof recalculated === 'number' && { change: recalculated - issued }),
      }))
    return [...verdictThen(again.evaluation, other.evaluation), ...figures]
  } catch {
    // With this value alone the test cannot be evaluated: there is no figure to name.
    return []
  }
}

/** What becomes of the verdict, which is what counts first. */
function verdictThen(issued: Evaluation, then: Evaluation): Difference[] {
  const [before, after] = [issued.verdict.outcome, then.verdict.outcome]
  if (before === after) return []
  const label = 'verdict'
  const [recorded, expected] = [outcomeWords[before], outcomeWords[after]]
  return [{ kind: 'evaluation', label, recorded, expected, rounding: false }]
}

/**
 * Where logged values were changed in their cells and the file was calculated again, hundreds of cells follow. Those that hold
 * just what the changed values give are left out, and counted.
 */
export async function withoutFollowing(
  differences: readonly Difference[],
  grid: Grid,
  { version, record, recorded }: Context,
  issued: IssuedFile,
): Promise<{ readonly differences: Difference[]; readonly following: number }> {
  const inputs = differences.filter((one) => one.kind === 'input' && !one.rounding)
  const others = differences.filter((one) => !inputs.includes(one))
  if (inputs.length === 0 || others.length === 0) return { differences: [...differences], following: 0 }
  const byPath = new Map(leavesOf(record).map(({ keys }) => [pathText(keys), keys]))
  const fields = inputs.flatMap(({ path, recorded: now }) => {
    const keys = path === undefined ? undefined : byPath.get(path)
    return keys && now !== null ? [{ keys, value: now }] : []
  })
  try {
    const changed = withFields(record, fields)
    const again = expectedOnSheets(recorded, runAgain(version, changed, recorded))
    const laidOut = await version.layOutSummary(changed, again)
    const left = new Set(
      compareSheets(grid, laidOut.workbook.worksheets, new Map(), RECALCULATED_ZERO)
        .differences.filter(({ rounding }) => !rounding)
        .map(({ cell }) => cell),
    )
    const stays = others.filter(
      ({ kind, cell, rounding }) => rounding || kind !== 'cell' || left.has(cell) || !isFormula(issued, cell),
    )
    return { differences: [...inputs, ...stays], following: others.length - stays.length }
  } catch {
    return { differences: [...differences], following: 0 }
  }
}

function isFormula({ workbook }: IssuedFile, cell: string | undefined): boolean {
  const [sheet = '', address = ''] = (cell ?? '').split('!')
  const found = workbook.getWorksheet(sheet)?.getCell(address)
  return found?.formula !== undefined
}
