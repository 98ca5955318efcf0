import { findUnit } from '../../cells/units.js'
import { type Written, writtenIn } from '../../cells/written.js'
import type { Content } from './cell-content.js'
import { cellsOf, READ, type View } from './view.js'

/** Fewer cells of two numbers below one another are no column of readings. */
const FEWEST = 4

/** A sheet has a column of pairs for each run; with more than these it is none of ours. */
const MOST_COLUMNS = 8

/**
 * A sheet whose readings stand in pairs in one column ("−55.3 / 412", "−55.3 Pa, 412 m³/h"), or in one for each run, with every such
 * column parted in two. Undefined where there is none.
 */
export function pairedView(view: View): View | undefined {
  let parted: View | undefined
  let from = 0
  for (let count = 0; count < MOST_COLUMNS; count++) {
    const column = columnOfPairs(parted ?? view, from)
    if (column === undefined) break
    parted = partedAt(parted ?? view, column)
    from = column + 2
  }
  return parted
}

function partedAt(view: View, column: number): View {
  const own = (at: number) => (at <= column ? at : at - 1)
  const at = (row: number, index: number): Content | undefined => {
    const content = view.at(row, own(index))
    if (content?.kind !== 'text' || own(index) !== column) return index === column + 1 ? undefined : content
    const pair = pairIn(content.text, view)
    const part = index === column ? 0 : 1
    if (pair) return { kind: 'number', written: pair[part] }
    // Figures are no headings: "zero before −1.2 Pa, after −0.8 Pa" stays whole.
    if (/(?<!\p{L})\d/u.test(content.text)) return part === 0 ? content : undefined
    const words = [/\s[/,]\s|[;|]|\s{2,}/, /[/,]/].map((sign) =>
      content.text.split(sign).map((one) => one.trim()),
    )
    const two = words.find((list) => list.length === 2 && list.every((one) => one !== ''))
    if (two) return { kind: 'text', text: two[part] as string }
    return part === 0 ? content : undefined
  }
  return {
    ...view,
    columns: view.columns + 1,
    ...cellsOf(at),
    address: (row, index) => view.address(row, own(index)),
    hidden: (row, index) => view.hidden(row, own(index)),
    comment: (row, index) => view.comment(row, own(index)),
    right: (row, index) => {
      const right = view.right(row, own(index))
      return right > column ? right + 1 : Math.max(index, right)
    },
  }
}

function columnOfPairs(view: View, from: number): number | undefined {
  for (let column = from; column < view.columns; column++) {
    let pairs = 0
    for (let row = 0; row < Math.min(view.rows, READ.rows); row++) {
      const text = view.text(row, column)
      pairs = text !== undefined && pairIn(text, view) ? pairs + 1 : 0
      if (pairs === FEWEST && isOfExtremes(view, row - FEWEST, column)) break
      if (pairs >= FEWEST) return column
    }
  }
  return undefined
}

/** "Pa (min / max)": two numbers of one pressure. */
const isOfExtremes = (view: View, row: number, column: number): boolean => {
  const words = (view.text(row, column) ?? view.text(row - 1, column) ?? '').toLowerCase()
  return words.includes('min') && words.includes('max')
}

const FIGURE = /[-−–+]?\d+(?:[.,]\d+)?/g

/** "2 692.1": one number. */
const GROUPED = /^\s*[-−–+]?\d{1,3}(?:[  ]\d{3})+(?:[.,]\d+)?\s*$/

/** Two numbers of one text with their units; a word in front of a number, as in "q = 412", is left out. */
const pairIn = (text: string, view: View): [Written, Written] | undefined =>
  plainPairIn(text, view) ?? pairInSentence(text, view)

/** "At −55.3 Pa the fan moved 412 m³/h": the one pressure and the one air flow that a sentence states. */
function pairInSentence(text: string, { decimal }: View): [Written, Written] | undefined {
  if (text.length > 120 || !/\d/.test(text)) return undefined
  const stated = [...text.matchAll(STATED)].flatMap(([, figure = '', words = '']) => {
    const unit = [words, words.split(/\s/)[0] ?? '']
      .map((one) => one.replace(/(?<![.,;:)])[.,;:)]+$/, ''))
      .find((one) => findUnit(one))
    const written = unit === undefined ? undefined : writtenIn(`${figure} ${unit}`, decimal)
    return written ? [written] : []
  })
  const [one, other] = stated.filter(({ unit }) => unit?.kind === 'pressure' || unit?.kind === 'flow')
  return stated.length === 2 && one && other && one.unit?.kind !== other.unit?.kind ? [one, other] : undefined
}

/** A number with the word or two behind it. */
const STATED = /(?<![\p{L}\d.,^])([-−–+]?\d+(?:[.,]\d+)?)\s?([^\s\d,;]\S*(?: \p{L}\S*)?)/gu

function plainPairIn(text: string, { decimal }: View): [Written, Written] | undefined {
  if (text.length > 40 || GROUPED.test(text)) return undefined
  const figures = [...text.matchAll(FIGURE)].filter(({ index }) => !/[\p{L}^]/u.test(text[index - 1] ?? ' '))
  const [first, second] = figures
  if (!first || !second || figures.length > 2) return undefined
  const front = text.slice(0, first.index).trim()
  if (front !== '' && !/^(?:[Δδ∆d]?p|[qv])\s*[:=]?$/iu.test(front)) return undefined
  const between =
    text
      .slice(first.index + first[0].length, second.index)
      .split(/[/;|,@]\s|\s{2,}|\s(?=[\p{L}Δ]{1,3}\s*[:=])/u)[0] ?? ''
  const one = writtenIn(`${first[0]} ${between.replace(/(?<![\s/;|,@])[\s/;|,@]+$/, '')}`.trim(), decimal)
  const other = writtenIn(text.slice(second.index).trim(), decimal)
  return one && other ? [one, other] : undefined
}
