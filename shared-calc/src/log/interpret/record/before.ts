import { dayInWords, quoted } from '../../../catalogue/words.js'
import { printed } from '../../../contract/check.js'
import type { CellMap } from '../../../contract/problem.js'
import { fieldKind } from '../../cells/fields.js'
import { RECORD_UNITS, shown } from '../../cells/units.js'
import type { Answers } from '../interpretation.js'

/** What a log or a record has without the answers. */
export interface Before {
  /** In the shape of a record. */
  readonly record: Readonly<Record<string, unknown>>
  /** Field path → cell address. */
  readonly cells: CellMap
}

/** What was there at a path, and how a person reads it; undefined where there was nothing. */
export function valueBefore(
  record: Before['record'],
  path: string,
): { readonly value?: number | string; readonly words: string } | undefined {
  const [part = '', name = ''] = path.split('.', 2)
  const value = (record[part] as Record<string, unknown> | undefined)?.[name]
  if (typeof value === 'number' || typeof value === 'string') return { value, words: inWords(path, value) }
  // A target may have limits of its own and no name.
  return path === 'target.preset' && record.target !== undefined ? { words: 'the limits stated' } : undefined
}

function inWords(path: string, value: number | string): string {
  const kind = fieldKind(path)
  if (typeof value === 'string') return kind.kind === 'date' ? dayInWords(value) : quoted(value)
  return kind.kind === 'quantity' && kind.quantity !== 'fraction'
    ? `${printed(value)} ${shown(RECORD_UNITS[kind.quantity])}`
    : printed(value)
}

/** Whether an answer is for a single field of the record, and so may take the place of a value. */
export const isForField = (path: string): boolean => /^(building|test|conditions|target)\./.test(path)

/** The answers without those for fields; undefined where there are none of them. */
export function answersWithoutFields(answers: Answers): Answers | undefined {
  const others = Object.entries(answers).filter(([path]) => !isForField(path))
  return others.length < Object.keys(answers).length ? Object.fromEntries(others) : undefined
}
