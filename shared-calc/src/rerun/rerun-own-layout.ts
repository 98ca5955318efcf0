import { digestOf, type Evaluation, problemsInWords } from '../contract/record/index.js'
import { addressOf, withSheet } from '../log/grid/address.js'
import type { Grid } from '../log/grid/grid.js'
import { applyLayout, type ReadTest } from '../log/layout/apply.js'
import { locate } from '../log/layout/locate.js'
import type { Layout, RecordedResult } from '../log/layout/schema.js'
import type { Scope } from '../log/layout/scope.js'
import { splitTests } from '../log/layout/split-tests.js'
import { LogError } from '../log/problem.js'
import { layoutOf, NOT_A_SUMMARY } from '../reports/archive/open-archived.js'
import { lineOf } from '../reports/register/test-line.js'
import { versions as known } from '../versions/list.js'
import { runnable, type VersionParts } from '../versions/version.js'
import { printedAgrees } from './agreement.js'
import { displayedNumber } from './displayed.js'
import { otherEvaluations } from './explain-result.js'
import { outcomeOf } from './outcome.js'
import { type Difference, type RerunTest, unreadable } from './report.js'
import type { RerunOptions } from './rerun-options.js'

/**
 * Re-runs a firm's own workbook: its inputs are read by the layout and evaluated by the current version, and the cells
 * that the layout names as results are compared at the precision they show.
 */
export async function rerunOwnLayout(file: string, grid: Grid, options: RerunOptions): Promise<RerunTest[]> {
  const { layouts = [], versions = known } = options
  const layout = layoutOf(grid, layouts)
  const current = versions.at(-1)
  if (!layout || !current) return [unreadable(file, NOT_A_SUMMARY)]
  const { evaluateWorked } = await runnable(current)
  const scopes = splitTests(grid, layout)
  return applyLayout(grid, layout).map((read, i) => {
    const part = scopes.length > 1 ? { part: `test ${i + 1}` } : {}
    const scope = scopes[i]
    if (!read.record || !scope) return { ...unreadable(file, problemsInWords(read.problems)), ...part }
    return { ...rerunTest(file, read, read.record, scope, layout, evaluateWorked), ...part }
  })
}

function rerunTest(
  file: string,
  { findings }: ReadTest,
  record: NonNullable<ReadTest['record']>,
  scope: Scope,
  layout: Layout,
  evaluateWorked: VersionParts['evaluateWorked'],
): RerunTest {
  const { evaluation } = evaluateWorked(record, { findings })
  const results = layout.results ?? []
  const differences = results.flatMap((result) => compareResult(scope, layout, result, evaluation))
  const explained = explanations(differences, () =>
    otherEvaluations(record, evaluateWorked).map(([says, other]) => ({
      says,
      labels: new Set(
        results
          .flatMap((result) => compareResult(scope, layout, result, other))
          .filter(({ rounding }) => !rounding)
          .map(({ label }) => label),
      ),
    })),
  )
  const { building, test } = record
  const outcome =
    results.length === 0
      ? {
          outcome: 'cannot be read' as const,
          why: `this is a test log, not a summary, and its layout "${layout.name}" names no recorded results to compare: give the summary workbook that was made from it`,
        }
      : withCount(
          outcomeOf(differences),
          results.length,
          results.some((one) => 'tolerance_relative' in one && one.tolerance_relative !== undefined),
        )
  return {
    file,
    kind: 'own layout',
    ...outcome,
    building: building.name,
    ...(building.site !== undefined && { site: building.site }),
    date: test.date,
    ...(test.id !== undefined && { testNumber: test.id }),
    calculationVersion: evaluation.calculationVersion,
    recordDigest: digestOf(record),
    line: lineOf({ file, source: 'own layout' }, record, evaluation),
    given: { record },
    compared: { figures: results.length, cells: results.length },
    differences,
    sinceIssue: [],
    notes: [
      `read with the layout "${layout.name}"; results are compared at the displayed precision`,
      ...explained,
      'only a Draughtbook workbook has a digest, so changes to inputs cannot be detected',
      ...findings.filter(({ severity }) => severity !== 'note').map(({ message }) => message),
    ],
  }
}

/** Of each figure that differs, what would make it agree. */
function explanations(
  differences: readonly Difference[],
  others: () => readonly { readonly says: string; readonly labels: ReadonlySet<string> }[],
): string[] {
  const figures = differences.filter(({ rounding, change }) => !rounding && change !== undefined)
  if (figures.length === 0) return []
  const found = others()
  return figures.flatMap(({ label }) => {
    const reasons = found.filter(({ labels }) => !labels.has(label)).map(({ says }) => says)
    return reasons.length > 0 ? [`${label} would agree if ${reasons.join(', or if ')}`] : []
  })
}

const withCount = (
  found: Pick<RerunTest, 'outcome' | 'why'>,
  results: number,
  tolerated: boolean,
): Pick<RerunTest, 'outcome' | 'why'> =>
  found.outcome === 'agrees'
    ? {
        ...found,
        why: `all ${results} recorded results agree at the displayed precision${tolerated ? ', or within the tolerance the layout states' : ''}`,
      }
    : found

function compareResult(
  scope: Scope,
  layout: Layout,
  result: RecordedResult,
  evaluation: Evaluation,
): Difference[] {
  const path = `results ${result.figure}`
  const direction = 'direction' in result ? result.direction : undefined
  const label = `${direction ? `${direction}: ` : ''}${result.figure}`
  try {
    const { sheet, row, column } = locate(scope, result.at, path)
    const cell = sheet.at(row, column)
    const place = { label, cell: withSheet(sheet.name, addressOf(row, column)) }
    const figure = { kind: 'figure' as const, ...place }
    if (result.figure === 'outcome') {
      const { outcome } = evaluation.verdict
      const said = cell?.value ?? null
      const means = wordOf(result.words, said)
      return means === outcome ? [] : [{ ...figure, recorded: said, expected: outcome, rounding: false }]
    }
    const expected = expectedFigure(evaluation, result.figure, direction)
    const shown = cell && displayedNumber(cell, layout.decimal ?? scope.grid.decimal)
    if (expected === undefined || !shown)
      return [
        {
          ...figure,
          recorded: cell?.value ?? null,
          expected: expected?.value ?? null,
          ...(expected?.unit && { unit: expected.unit }),
          rounding: false,
        },
      ]
    const agreement = printedAgrees(shown.value, expected.value, shown.decimals)
    if (agreement === 'same') return []
    return [
      {
        ...figure,
        unit: expected.unit,
        recorded: shown.value,
        expected: expected.value,
        change: shown.value - expected.value,
        rounding: agreement === 'rounding' || withinTolerance(result, shown.value, expected.value),
      },
    ]
  } catch (error) {
    if (!(error instanceof LogError)) throw error
    return [
      {
        kind: 'figure',
        label: `${label}: ${problemsInWords(error.problems)}`,
        recorded: null,
        expected: null,
        rounding: false,
      },
    ]
  }
}

/** Within the share that the layout states for the figure. */
const withinTolerance = (
  { tolerance_relative: share = 0 }: Exclude<RecordedResult, { figure: 'outcome' }>,
  found: number,
  expected: number,
): boolean => Math.abs(found - expected) <= share * Math.abs(expected)

const wordOf = (words: Readonly<Record<string, string>>, said: Difference['recorded']): string | undefined =>
  Object.entries(words).find(([word]) => word.trim().toLowerCase() === String(said).trim().toLowerCase())?.[1]

type FigureName = Exclude<RecordedResult['figure'], 'outcome'>

function expectedFigure(
  evaluation: Evaluation,
  name: FigureName,
  direction: string | undefined,
): { value: number; unit: string } | undefined {
  const run = evaluation.runs.find((one) => one.direction === direction)
  if (name === 'rSquared') return run?.rSquared === undefined ? undefined : { value: run.rSquared, unit: '1' }
  if (name === 'airFlowCoefficient' || name === 'airLeakageCoefficient' || name === 'airFlowExponent')
    return run?.[name]
  return direction === undefined ? evaluation.results[name] : run?.[name]
}
