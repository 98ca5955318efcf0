import type { Chapter } from '../parse/chapter.js'
import type { Bindings, Block, Column, Given, Inputs } from './calculation.js'

/**
 * What a chapter asks for, by symbol: what is given by hand, else what the first block has that has it.
 * What nobody has is left out, and with it the formulas that need it.
 */
export const inputsBySymbol = (chapter: Chapter, given: Bindings, blocks: readonly Block[]): Inputs =>
  chapter.inputs.map(({ symbol, rows }) => given[symbol] ?? taken(symbol, rows === true, blocks))

function taken(symbol: string, rows: boolean, blocks: readonly Block[]): Given | Column | undefined {
  for (const block of blocks) if (block.has(symbol)) return rows ? block.refColumn(symbol) : block.ref(symbol)
  return undefined
}
