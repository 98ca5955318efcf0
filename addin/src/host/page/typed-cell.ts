import type { Cell } from '@draughtbook/shared-calc/log'
import { parseNumber } from '../../entry/parse-number.ts'

/** The cell that typing leaves behind: a number where the text is one without doubt, else the text itself. */
export function typedCell(text: string, before: Cell | undefined): Cell | undefined {
  const trimmed = text.trim()
  if (trimmed === '') return undefined
  const number = parseNumber(trimmed)
  const format = before?.format === undefined ? {} : { format: before.format }
  if ('value' in number) return { kind: 'number', value: number.value, ...format }
  return { kind: 'text', value: trimmed }
}
