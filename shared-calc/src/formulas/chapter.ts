import { constants } from '../catalogue/constants.js'
import {
  type Chapter,
  type ChapterDefinition,
  chapterOf,
  FormulaError,
  type Packed,
  type Script,
  type Source,
  unpack,
} from '../engine/index.js'
import { parsed } from './parsed.generated.js'
import { scripts } from './scripts.generated.js'

/** A chapter of domain formulas over the project's constants. */
export const chapter = <F extends string, I extends string>(
  definition: ChapterDefinition<F, I>,
): Chapter<F | I, I> => chapterOf(definition, constants, parsedExpression, scriptOf)

const scriptOf = (title: string): Script | undefined => scripts[title]

/** The tree of an expression, parsed when the project was built. */
function parsedExpression(text: string) {
  const packed = parsed[text] as Packed | undefined
  if (packed === undefined)
    throw new FormulaError(`"${text}" is not in formulas/parsed.generated.ts: run npm run formulas`)
  return unpack(packed)
}

export const memory = (text: string): Source => ({ text, seen: 'memory' })
export const read = (text: string): Source => ({ text, seen: 'read' })
export const derived = (text: string): Source => ({ text, seen: 'derived' })
export const practice: Source = { text: 'common practice, no source', seen: 'common practice' }
export const definition = (text: string): Source => ({ text, seen: 'definition' })
