import { assemble } from './assemble.js'
import { attachCells, type CellMap } from './cell-map.js'
import { methodById } from './methods/index.js'
import { type Evaluation, type Finding, parseRecord, type TestRecord } from './record/index.js'
import { traceOf } from './sheet/index.js'
import { workOut } from './work/work-out.js'
import type { WorkedTest } from './work/worked-test.js'

export interface EvaluateOptions {
  /** Field path → cell address, where the record came from a sheet. */
  readonly cells?: CellMap
  /** What reading the log had to convert or leave out; they stand first and count for the verdict. */
  readonly findings?: readonly Finding[]
  /** Whether to add every step of the working. */
  readonly trace?: boolean
}

/**
 * The main job: a test record in, its evaluation out.
 * @param record - a record that {@link parseRecord} has checked
 * @throws InputError naming the field (and cell) that stops the calculation
 */
export function evaluate(record: TestRecord, options: EvaluateOptions = {}): Evaluation {
  return evaluateWorked(record, options).evaluation
}

/** The evaluation together with the blocks it was read off, for the workbook. */
export function evaluateWorked(
  record: TestRecord,
  { cells, findings: told = [], trace = false }: EvaluateOptions = {},
): { evaluation: Evaluation; test: WorkedTest } {
  const method = methodById(record.test.method)
  const test = workOut(record, method)
  const ruled = method.rules.flatMap((rule) => rule({ record, method, test }))
  const findings = [...told, ...attachCells(ruled, cells)]
  const evaluation = assemble(record, method, test, findings)
  return { evaluation: trace ? { ...evaluation, trace: traceOf(test.calculation) } : evaluation, test }
}

/** Evaluates unchecked input. Throws InputError with every fault. */
export const evaluateInput = (input: unknown, options: EvaluateOptions = {}): Evaluation =>
  evaluate(parseRecord(input, options.cells), options)
