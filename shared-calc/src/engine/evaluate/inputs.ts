import type { Chapter } from '../parse/chapter.js'
import type { Block } from './block.js'
import type { Column, Given } from './given.js'

/** Inputs of a chapter in its order, undefined where one is left out. */
export type Inputs = readonly (Given | Column | undefined)[]

/** What is given by hand: for which symbols, and what for each; undefined where it is not known. */
export interface ByHand {
  readonly symbols: ReadonlySet<string>
  of(symbol: string): Given | Column | undefined
}

/**
 * What a chapter asks for, by symbol: what is given by hand, else what the first block has that has it.
 * What nobody has is left out, and with it the formulas that need it.
 */
export function inputsBySymbol(chapter: Chapter, byHand: ByHand, blocks: readonly Block<string>[]): Inputs {
  const sources = sourcesOf(chapter, byHand, blocks)
  const inputs: (Given | Column | undefined)[] = []
  for (let i = 0; i < sources.length; i += 1) {
    const symbol = chapter.inputs[i]?.symbol ?? ''
    const source = sources[i] as number
    inputs.push(source === BY_HAND ? byHand.of(symbol) : blocks[source]?.offer(symbol))
  }
  return inputs
}

/** Where each input of a chapter comes from: the place of a block, or by hand; nowhere is a place without a block. */
type Sources = readonly number[]
const BY_HAND = -1
const NOWHERE = -2

interface Known {
  readonly symbols: ReadonlySet<string>
  readonly chapters: readonly Chapter[]
  readonly sources: Sources
}

/** The same chapters follow one another in every test of a method: where their inputs come from is found once. */
const known = new WeakMap<Chapter, Known[]>()

function sourcesOf(chapter: Chapter, { symbols }: ByHand, blocks: readonly Block<string>[]): Sources {
  const before = known.get(chapter) ?? []
  for (const one of before)
    if (one.symbols === symbols && sameChapters(one.chapters, blocks)) return one.sources
  const sources = chapter.inputs.map(({ symbol }) => {
    if (symbols.has(symbol)) return BY_HAND
    const block = blocks.findIndex((one) => one.has(symbol))
    return block < 0 ? NOWHERE : block
  })
  known.set(chapter, [...before, { symbols, chapters: blocks.map((block) => block.chapter), sources }])
  return sources
}

function sameChapters(chapters: readonly Chapter[], blocks: readonly Block<string>[]): boolean {
  if (chapters.length !== blocks.length) return false
  for (let i = 0; i < chapters.length; i += 1) if (chapters[i] !== blocks[i]?.chapter) return false
  return true
}
