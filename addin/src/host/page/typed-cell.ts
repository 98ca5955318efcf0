import { type Cell, interpret } from '@draughtbook/shared-calc/log'

// In a file of its own: the log reader that it needs is loaded when somebody types, not with the page.
/** The cell that typing leaves behind: a number where the text is one without doubt, else the text itself. */
export function typedCell(text: string, before: Cell | undefined): Cell | undefined {
  const trimmed = text.trim()
  if (trimmed === '') return undefined
  const look = before?.fill === undefined ? {} : { fill: before.fill }
  const asText: Cell = { kind: 'text', value: trimmed, ...look }
  const read = interpret(asText, { kind: 'number' }, {})
  if ('refused' in read || typeof read.value !== 'number') return asText
  return {
    kind: 'number',
    value: read.value,
    ...look,
    ...(before?.format === undefined ? {} : { format: before.format }),
  }
}
