import { constants } from '../catalogue/constants.js'
import { type Chapter, type ChapterDefinition, defineChapter, type Source } from '../engine/index.js'

/** A chapter of domain formulas over the project's constants. */
export const chapter = (definition: ChapterDefinition): Chapter => defineChapter(definition, constants)

export const memory = (text: string): Source => ({ text, seen: 'memory' })
export const read = (text: string): Source => ({ text, seen: 'read' })
export const derived = (text: string): Source => ({ text, seen: 'derived' })
export const practice: Source = { text: 'common practice, no source', seen: 'common practice' }
export const definition = (text: string): Source => ({ text, seen: 'definition' })
