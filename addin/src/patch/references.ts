import { type Area, parseArea } from '../host/address.js'

/** The cells a formula reads; `unknown` where it reads through a name, a table, another workbook or an address made up as it runs. */
export type References = readonly Area[] | 'unknown'

const MADE_UP = ['INDIRECT', 'OFFSET']

/** Cells that a spreadsheet formula refers to. What is not plainly a cell counts as unknown, so that nothing is missed. */
export function referencesIn(formula: string): References {
  const areas: Area[] = []
  let at = 0
  while (at < formula.length) {
    const letter = formula[at] ?? ''
    if (letter === '"') at = afterQuoted(formula, at)
    else if (letter === '[' || letter === '#') return 'unknown'
    else if (letter === "'" || isWord(letter)) {
      const start = at
      if (letter === "'") at = afterQuoted(formula, at)
      while (isWord(formula[at] ?? '')) at += 1
      const word = formula.slice(start, at)
      if (formula[at] === '(') {
        if (word.includes(':') || MADE_UP.includes(word.toUpperCase())) return 'unknown'
        continue
      }
      const area = parseArea(word)
      if (area && !area.sheet?.includes(':')) areas.push(area)
      else if (!isConstant(word)) return 'unknown'
    } else at += 1
  }
  return areas
}

/** Place after the closing quotation mark; a doubled mark does not close. */
function afterQuoted(text: string, start: number): number {
  const mark = text[start] ?? ''
  let end = text.indexOf(mark, start + 1)
  while (end >= 0 && text[end + 1] === mark) end = text.indexOf(mark, end + 2)
  return end < 0 ? text.length : end + 1
}

const isWord = (letter: string): boolean =>
  letter !== '' && !' \t\r\n()+-*/^&=<>,;{}%@"\'[]#'.includes(letter)

const isConstant = (word: string): boolean =>
  /^(true|false)$/i.test(word) || (word !== '' && Number.isFinite(Number(word)))
