import type { Problem } from '../problem.js'
import { type Directions, placeWords } from './place-words.js'

/**
 * A problem as people read it: the cell, else the field in words, then what is wrong. The field is not named twice where the message
 * names it.
 */
export function problemWords({ path, cell, message }: Problem, given: Directions = {}): string {
  if (cell) return `${cell}: ${message}`
  const said = message.toLowerCase()
  const words = path === '' ? [] : placeWords(path, given).split(', ')
  const place = words.filter((word) => !said.includes(word.toLowerCase())).join(', ')
  return place ? `${place}: ${message}` : message
}

/** Several problems in one text, each once. */
export const problemsInWords = (problems: readonly Problem[], given?: Directions): string =>
  [...new Set(problems.map((problem) => problemWords(problem, given)))].join('; ')
