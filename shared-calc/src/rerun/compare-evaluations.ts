import type { AssessedTest } from '../assessment/evaluate.js'
import { type Evaluation, pathText } from '../contract/record/index.js'
import { numberText, symbolText, traceStep } from '../engine/index.js'
import { reference } from '../reports/workbook/address.js'
import { publishedFigures } from '../reports/workbook/figures.js'
import { leavesOf } from '../reports/workbook/leaves.js'
import type { Places } from '../reports/workbook/places.js'
import { computedAgrees } from './agreement.js'
import type { Difference, DifferenceValue } from './report.js'

export interface ComparedFigures {
  readonly figures: number
  readonly differences: Difference[]
}

/**
 * Recorded against recomputed: every published figure with its cell and working, then every other part of the
 * evaluation by its path. Cells, versions and digests are no results, and are compared elsewhere.
 */
export function compareEvaluations(
  recorded: Evaluation,
  recomputed: Evaluation,
  test: AssessedTest,
  places?: Places,
): ComparedFigures {
  const before = new Map(publishedFigures(recorded, test).map((figure) => [figure.label, figure]))
  const figures = publishedFigures(recomputed, test)
  const differences = figures.flatMap(({ label, unit, recorded: expected, block, symbol }): Difference[] => {
    const found = before.get(label)?.recorded ?? null
    const agreement = found === null ? 'differs' : computedAgrees(found, expected, floorOf(label, recomputed))
    if (agreement === 'same') return []
    return [
      {
        kind: 'figure',
        label,
        ...(unit && { unit }),
        ...(places && { cell: reference(places.symbol(block, symbol)).replaceAll('$', '') }),
        recorded: found,
        expected,
        ...(found !== null && { change: found - expected }),
        rounding: agreement === 'rounding',
        working: workingOf(test, block, symbol),
      },
    ]
  })
  const told = new Set(differences.map((one) => pairKey(one.recorded, one.expected)))
  const others = otherParts(recorded, recomputed).filter(
    (one) => !told.has(pairKey(one.recorded, one.expected)),
  )
  return { figures: figures.length, differences: [...differences, ...others] }
}

/** Below it a figure counts as zero: a margin beside its limit, a probability beside 1. As on sheet Check. */
function floorOf(label: string, { verdict }: Evaluation): number | undefined {
  if (/probab/i.test(label)) return FLOOR
  return /margin/i.test(label) ? FLOOR * (verdict.target?.limit ?? 1) : undefined
}
const FLOOR = 1e-9

const pairKey = (recorded: DifferenceValue, expected: DifferenceValue): string =>
  `${String(recorded)}|${String(expected)}`

function otherParts(recorded: Evaluation, recomputed: Evaluation): Difference[] {
  const found = leavesByPath(recorded)
  const expected = leavesByPath(recomputed)
  return [...new Set([...found.keys(), ...expected.keys()])].flatMap((path): Difference[] => {
    const [a, b] = [found.get(path) ?? null, expected.get(path) ?? null]
    if (a === b) return []
    const numbers = typeof a === 'number' && typeof b === 'number'
    const agreement = numbers ? computedAgrees(a, b, floorOf(path, recomputed)) : 'differs'
    if (agreement === 'same') return []
    return [
      {
        kind: 'evaluation',
        label: path,
        path,
        recorded: a,
        expected: b,
        ...(numbers && { change: a - b }),
        rounding: agreement === 'rounding',
      },
    ]
  })
}

function leavesByPath({
  trace: _,
  calculationVersion: __,
  recordDigest: ___,
  findings,
  ...rest
}: Evaluation) {
  // A finding's cells belong to the log it was read from, which is not at hand.
  const told = findings.map(({ cells: _, ...finding }) => finding)
  return new Map(leavesOf({ ...rest, findings: told }).map(({ keys, value }) => [pathText(keys), value]))
}

/** The last step of a figure's working: its formula, with the numbers put in. */
function workingOf({ calculation }: AssessedTest, block: string, symbol: string): string {
  const from = calculation.get(block)
  const step = from.chapter.steps.find((one) => one.symbol === symbol)
  if (!step) return `${symbolText(symbol)} = ${numberText(from.value(symbol))}, an input of ${from.title}`
  const { expression, substituted, unit, source } = traceStep(from, step)
  const value = numberText(from.value(symbol))
  return `${symbolText(symbol)} = ${expression} = ${substituted} = ${value} ${unit === '1' ? '' : unit} (${source})`
}
