import { InputError, type Problem } from '../contract/problem.js'

/** Why a log, or a cell of it, cannot be read. Codes are stable: tests and the service key on them. */
export type LogProblemCode =
  | 'too-large'
  | 'too-many-parts'
  | 'compression-bomb'
  | 'too-many-sheets'
  | 'too-many-cells'
  | 'sheet-too-wide'
  | 'damaged-file'
  | 'document-type'
  | 'wrong-extension'
  | 'unsupported-format'
  | 'encrypted'
  | 'unreadable-text'
  | 'no-layout'
  | 'layout-invalid'
  | 'layout-mismatch'
  | 'not-found'
  | 'no-test'
  | 'ambiguous'
  | 'ambiguous-number'
  | 'ambiguous-date'
  | 'not-a-number'
  | 'not-a-date'
  | 'unknown-unit'
  | 'unknown-word'
  | 'error-value'
  | 'formula-without-result'
  | 'struck-through'
  | 'hidden-cell'
  | 'series-unusable'
  | 'record-invalid'
  | 'open-question'

export interface LogProblem extends Problem {
  code: LogProblemCode
}

/** A log that cannot be read. Every problem says what is wrong, where (sheet and cell) and what to do. */
export class LogError extends InputError {
  constructor(override readonly problems: readonly LogProblem[]) {
    super(problems)
  }
}

export function refuse(code: LogProblemCode, message: string, place: Place = {}): never {
  throw new LogError([problem(code, message, place)])
}

/** Where a problem is, and what else is known of it. */
type Place = Partial<Pick<Problem, 'path' | 'cell' | 'missing' | 'fault'>>

export function problem(
  code: LogProblemCode,
  message: string,
  { path = '', cell, missing, fault }: Place = {},
): LogProblem {
  return {
    code,
    path,
    ...(cell !== undefined && { cell }),
    message,
    ...(missing && { missing }),
    ...(fault !== undefined && { fault }),
  }
}
