import { LIMITS } from '../../limits.js'
import { refuse } from '../../problem.js'
import type { Cell } from '../grid.js'
import type { StoredText } from './rich-text.js'
import { unescapeText } from './rich-text.js'
import type { CellStyle as WrittenStyle } from './styles-part.js'

/** A style with the colours it names by place looked up. */
export type CellStyle = Omit<WrittenStyle, 'ground'> & Pick<Cell, 'fill'>

/** What all sheets of a workbook share. */
export interface SheetContext {
  strings: readonly StoredText[]
  styles: readonly CellStyle[]
  /** Filled cells counted over all sheets read. */
  budget: { cells: number }
}

/** The pieces of a <c> element. */
export interface CellParts {
  type: string
  style: number
  stored?: string
  formula?: string
  inline?: StoredText
}

/** The cell those pieces make; undefined when it holds nothing. Throws LogError on what no spreadsheet writes. */
export function cellOf(parts: CellParts, context: SheetContext, address: () => string): Cell | undefined {
  const { type, stored, formula, inline } = parts
  const style = context.styles[parts.style]
  // Most cells are plain numbers: nothing of what follows concerns them.
  if (
    type === 'n' &&
    formula === undefined &&
    stored !== undefined &&
    style?.format === undefined &&
    !style?.struck &&
    !style?.faint &&
    style?.fill === undefined
  ) {
    const value = Number(stored)
    if (stored.trim() !== '' && Number.isFinite(value)) return { kind: 'number', value }
  }
  const shared = {
    ...(style?.format === undefined ? {} : { format: style.format }),
    ...(formula === undefined ? {} : { formula }),
    ...(style?.struck ? { struck: 'whole' as const } : {}),
    ...(style?.faint ? { faint: style.faint } : {}),
    ...(style?.fill === undefined ? {} : { fill: style.fill }),
  }
  if (type === 'inlineStr') return textCell(inline ?? '', style, shared, address)
  if (type === 's') {
    if (stored === undefined) return undefined
    const text = context.strings[Number(stored)]
    if (text === undefined)
      return refuse('damaged-file', 'the cell refers to a text that the workbook does not contain', {
        cell: address(),
      })
    return textCell(text, style, shared, address)
  }
  if (type === 'str' && stored !== undefined) return textCell(unescapeText(stored), style, shared, address)
  if (stored === undefined || stored === '')
    return formula === undefined ? undefined : { ...shared, kind: 'unstored', value: '' }
  if (type === 'b') return { ...shared, kind: 'boolean', value: stored === '1' || stored === 'true' }
  if (type === 'e') return { ...shared, kind: 'error', value: stored }
  if (type === 'd') return { ...shared, kind: 'text', value: stored }
  const value = Number(stored)
  if (stored.trim() === '' || !Number.isFinite(value))
    return refuse('damaged-file', `the stored number ${JSON.stringify(stored.slice(0, 30))} cannot be read`, {
      cell: address(),
    })
  return { ...shared, kind: 'number', value }
}

function textCell(
  stored: StoredText,
  style: CellStyle | undefined,
  shared: Pick<Cell, 'format' | 'formula' | 'struck' | 'faint' | 'fill'>,
  address: () => string,
): Cell | undefined {
  const text = typeof stored === 'string' ? stored : stored.text
  if (text.length > LIMITS.cellCharacters)
    refuse('too-large', `the text is longer than the ${LIMITS.cellCharacters} characters a cell can hold`, {
      cell: address(),
    })
  if (text === '' && shared.formula === undefined) return undefined
  const { struck: _, ...rest } = shared
  if (typeof stored === 'string')
    return {
      ...rest,
      kind: 'text',
      value: text,
      ...(style?.struck && text ? { struck: 'whole' as const } : {}),
    }
  const unstruck = style?.struck ? stored.unstruck.inStruckCell : stored.unstruck.inPlainCell
  if (unstruck === text) return { ...rest, kind: 'text', value: text }
  if (unstruck.trim() === '') return { ...rest, kind: 'text', value: text, struck: 'whole' }
  return { ...rest, kind: 'text', value: text, struck: 'part', unstruck }
}
