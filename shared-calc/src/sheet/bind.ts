import type { Bindings, Block, Column, Given } from './calculation.js'
import type { Chapter } from './chapter.js'

/**
 * Binds what a chapter asks for by symbol: to what is given by hand, else to the first block that has it.
 * What nobody has is left out, and with it the formulas that need it.
 */
export function bindBySymbol(chapter: Chapter, given: Bindings, blocks: readonly Block[]): Bindings {
  const bound: Record<string, Given | Column | undefined> = {}
  for (const { symbol, rows } of chapter.inputs)
    bound[symbol] = given[symbol] ?? taken(symbol, rows === true, blocks)
  return bound
}

function taken(symbol: string, rows: boolean, blocks: readonly Block[]): Given | Column | undefined {
  for (const block of blocks) if (block.has(symbol)) return rows ? block.refColumn(symbol) : block.ref(symbol)
  return undefined
}
