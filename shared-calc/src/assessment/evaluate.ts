import { attachCells, type CellMap, InputError, withCells } from '../contract/problem.js'
import { acceptRecord, type Evaluation, type Finding, type TestRecord } from '../contract/record/index.js'
import { traceOf } from '../engine/index.js'
import { assemble } from '../evaluation/assemble.js'
import { joinBothDirections } from '../evaluation/rules/both-directions.js'
import { rules } from '../evaluation/rules/index.js'
import { inEach } from '../evaluation/rules/rule.js'
import { workOut } from '../evaluation/work/work-out.js'
import { methodById } from '../methods/index.js'
import { siteRules } from '../site/rules.js'
import { type TestWithSite, withSite } from '../site/test-with-site.js'
import { assembleUncertainty } from '../uncertainty/assemble-uncertainty.js'
import { uncertaintyFindings, uncertaintyUnbounded } from '../uncertainty/rules.js'
import { workUncertainty } from '../uncertainty/work-uncertainty.js'
import { UnboundedUncertainty, type WorkedUncertainty } from '../uncertainty/worked-uncertainty.js'

/** A whole test worked out, with site part and uncertainty budget where it has them. */
export interface AssessedTest extends TestWithSite {
  /** Only where asked for, or where the record has an uncertainty part. */
  readonly uncertainty?: WorkedUncertainty
}

export interface EvaluateOptions {
  /** Field path → cell address, where the record came from a sheet. */
  readonly cells?: CellMap
  /** What reading the log had to convert or leave out; they count for the verdict. */
  readonly findings?: readonly Finding[]
  /** Whether to add every step of the working. */
  readonly trace?: boolean
  /** Whether to add uncertainty budget, further fits and decision; always where the record has an uncertainty part. */
  readonly uncertainty?: boolean
}

/**
 * The main job: a test record in, its evaluation out.
 * @param record - a record that `parseRecord` has checked
 * @throws InputError naming the field (and cell) that stops the calculation
 */
export function evaluate(record: TestRecord, options: EvaluateOptions = {}): Evaluation {
  return evaluateWorked(record, options).evaluation
}

/** The evaluation together with the blocks it was read off, for the workbook. */
export function evaluateWorked(
  record: TestRecord,
  options: EvaluateOptions = {},
): { evaluation: Evaluation; test: AssessedTest } {
  try {
    return assess(record, options)
  } catch (error) {
    if (error instanceof InputError) throw withCells(error, options.cells)
    if (!(error instanceof UnboundedUncertainty)) throw error
    const findings = [...(options.findings ?? []), uncertaintyUnbounded(error)]
    return assess(record, { ...options, findings, uncertainty: false })
  }
}

function assess(
  record: TestRecord,
  {
    cells,
    findings: told = [],
    trace = false,
    uncertainty = record.uncertainty !== undefined,
  }: EvaluateOptions,
): { evaluation: Evaluation; test: AssessedTest } {
  const method = methodById(record.test.method)
  const worked = withSite(record, method, workOut(record, method))
  const sure = uncertainty ? workUncertainty(record, method, worked) : undefined
  const test: AssessedTest = sure ? { ...worked, uncertainty: sure } : worked
  const context = { record, method, test }
  const ruled = [
    ...inEach(rules, (rule) => rule(context)),
    ...inEach(siteRules, (rule) => rule(context)),
    ...(sure ? uncertaintyFindings(sure) : []),
  ]
  const findings = bySeverity([...told, ...attachCells(joinBothDirections(ruled), cells)])
  const official = assemble(record, method, test, findings)
  const evaluation = sure
    ? { ...official, ...assembleUncertainty(test, sure, official.verdict.outcome) }
    : official
  return { evaluation: trace ? { ...evaluation, trace: traceOf(test.calculation) } : evaluation, test }
}

const weight = { invalidates: 0, caution: 1, note: 2 } as const

/** What decides comes first; within a severity the order of the rules stays. */
const bySeverity = (findings: Finding[]): Finding[] =>
  findings.sort((a, b) => weight[a.severity] - weight[b.severity])

/** Evaluates unchecked input. Throws InputError with every fault. */
export const evaluateInput = (input: unknown, options: EvaluateOptions = {}): Evaluation =>
  evaluate(acceptRecord(input, options.cells), options)
