export * from './evaluate/calculation.js'
export { inputsBySymbol } from './evaluate/calculation.js'
export { exceeds, fallsBelow, toLimit, toLimitInSheet } from './evaluate/functions.js'
export {
  type Chapter,
  type ChapterDefinition,
  defineChapter,
  lazyChapter,
  neededSteps,
  type Step,
} from './parse/chapter.js'
export { type Expression, FormulaError, type Packed, pack, symbolsOf, unpack } from './parse/expression.js'
export { symbolParts, symbolText } from './parse/symbols.js'
export * from './quantity.js'
export { toMathml } from './render/to-mathml.js'
export { type SheetPlaces, toSheet } from './render/to-sheet.js'
export { numberText, toText } from './render/to-text.js'
export { traceOf, traceStep } from './render/trace.js'
