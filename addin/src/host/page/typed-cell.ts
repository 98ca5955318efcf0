import { type Cell, interpret } from '@draughtbook/shared-calc/log'

/** The cell that typing leaves behind: a number where the text is one without doubt, else the text itself. */
export function typedCell(text: string, before: Cell | undefined): Cell | undefined {
  const trimmed = text.trim()
  if (trimmed === '') return undefined
  const asText: Cell = { kind: 'text', value: trimmed }
  const read = interpret(asText, { kind: 'number' }, {})
  if ('refused' in read || typeof read.value !== 'number') return asText
  return {
    kind: 'number',
    value: read.value,
    ...(before?.format === undefined ? {} : { format: before.format }),
  }
}
