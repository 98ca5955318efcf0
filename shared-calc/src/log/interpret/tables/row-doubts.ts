import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { Faint } from '../../grid/grid.js'
import type { View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'
import { saysNo, saysYes } from '../words/yes-or-no.js'
import type { KnownColumn, Segment } from './columns.js'

/** Why a row may be none of the readings. */
export interface RowDoubt {
  readonly kind: 'grey' | 'remark'
  /** In words, behind "it" or "they": "is written in grey". */
  readonly why: string
  readonly look?: Faint
  /** The log says clearly that it does not count. */
  readonly out?: boolean
}

/** Nothing but noughts and ones, both of them: it says yes or no of each row, whatever its heading. */
function isOfFlags(view: View, first: number, { at, numbers, texts }: KnownColumn): boolean {
  if (texts > 0 || numbers < 3) return false
  const values = Array.from({ length: numbers }, (_, index) => view.number(first + index, at))
  return values.every((value) => value === 0 || value === 1) && new Set(values).size === 2
}

/** A column beside the readings that says of each whether it counts. */
export function marksOf({ view, head, columns }: Segment): { of(row: number): RowDoubt | undefined } {
  const marking = columns.filter(
    (column) =>
      ['remark', 'other', 'index'].includes(column.role) &&
      !says(column.label, 'zero') &&
      (((column.texts > 0 || says(column.label, 'used')) &&
        (says(column.label, 'used') || says(column.label, 'leftOut') || column.texts > 1)) ||
        isOfFlags(view, head.first, column)),
  )
  const readings = Math.max(...columns.map(({ numbers }) => numbers))
  return {
    of(row) {
      for (const { at, label, numbers, texts } of marking) {
        const word = view.text(row, at) ?? view.number(row, at)?.toString()
        const plain = word?.trim().toLowerCase()
        const marked = numbers + texts
        if (plain === undefined) {
          const isOneOfFew = says(label, 'used') && marked > readings / 2 && marked < readings
          if (isOneOfFew && view.at(row, at) === undefined)
            return { kind: 'remark', why: rowReasons.columnEmpty(label.text.trim(), view.address(row, at)) }
          continue
        }
        const why = rowReasons.columnSays(label.text.trim(), word ?? '', view.address(row, at))
        if (says(label, 'leftOut') && !saysNo(plain)) return { kind: 'remark', why, out: true }
        if (says(label, 'leftOut') || saysYes(plain)) continue
        if (saysNo(plain)) return { kind: 'remark', why, ...(says(label, 'used') ? { out: true } : {}) }
        // "Use? x" at a few: taken, or crossed out.
        if (says(label, 'used') && marked <= readings / 2) return { kind: 'remark', why }
      }
      return undefined
    },
  }
}

/** A reading in brackets among others without: negative, or not to be counted. */
export function withBracketDoubts<
  Row extends { readonly pressure: Bracketed; readonly carriers: readonly (Bracketed | undefined)[] },
>(rows: readonly Row[]): Row[] {
  const marked = rows.filter(({ pressure }) => pressure.bracketed)
  const turns = rows.filter((row, index) => index > 0 && isIn(row) !== isIn(rows[index - 1] as Row)).length
  // All in brackets, or one half of the table: as book-keepers write what is negative.
  const negative = turns === 0 || (turns === 1 && marked.length >= 3 && rows.length - marked.length >= 3)
  const sign = Math.sign(rows.find((row) => !isIn(row))?.pressure.value ?? -1)
  return rows.map((row) => {
    const flow = row.carriers.some((one) => one?.bracketed)
    if (!flow && (negative || !isIn(row))) return row
    const pressure =
      isIn(row) && !negative ? { ...row.pressure, value: sign * Math.abs(row.pressure.value) } : row.pressure
    return { ...row, pressure, doubt: { kind: 'remark', why: rowReasons.bracketed } }
  })
}

interface Bracketed {
  readonly value: number
  readonly bracketed?: true
}
const isIn = ({ pressure }: { readonly pressure: Bracketed }): boolean => pressure.bracketed === true

/** "Repeated, first attempt at 55 Pa discarded": more than that this reading does not count. */
export function isSentence(remark: string): boolean {
  const [first = '', ...rest] = readLabel(remark).tokens
  return rest.length >= 4 && !says(readLabel(first), 'leftOut')
}

/** "Discard", "rejected: gust" begin with it. "Door opened, ignore" may be of the door. */
function isPlain(remark: string): boolean {
  const { tokens } = readLabel(remark)
  const [first = '', ...rest] = tokens
  const isSaid = (words: readonly string[]) => says(readLabel(words.join(' ')), 'leftOut')
  const isPhrase = [1, 2].some(
    (count) => isSaid([first, ...rest.slice(0, count)]) && !rest.slice(0, count).some((one) => isSaid([one])),
  )
  return tokens.length <= 4 && !remark.includes('?') && (isSaid([first]) || isPhrase)
}

/** A remark that speaks of leaving something out, and perhaps not this reading. */
export const remarkDoubt = (remark: string): RowDoubt => ({
  kind: 'remark',
  why: rowReasons.rowSays(remark),
})

/** Every figure of a row written or shaded in grey or a colour, or a comment attached to one that speaks of leaving it out. */
export function doubtOf(view: View, row: number, numeric: readonly KnownColumn[]): RowDoubt | undefined {
  for (const { at } of numeric) {
    const comment = view.comment(row, at)
    if (comment !== undefined && says(readLabel(comment), 'leftOut')) {
      const why = rowReasons.commentSays(view.address(row, at), comment)
      return { kind: 'remark', why, ...(isPlain(comment) ? { out: true } : {}) }
    }
  }
  const looks = numeric.flatMap(({ at }) => {
    const content = view.at(row, at)
    return content?.kind === 'number' ? [content.written.faint] : content ? [undefined] : []
  })
  const [look] = looks
  return look && looks.every((one) => one === look)
    ? { kind: 'grey', why: rowReasons.grey(look), look }
    : undefined
}

/** As lines of a table are shaded by turns, only a few shaded rows say something. */
const MOST_OF: Readonly<Record<Faint, number>> = {
  written: 1 / 2,
  coloured: 0.45,
  shaded: 1 / 3,
  filled: 1 / 3,
}

/** A table written in grey or a colour throughout is a matter of taste: only a few rows that stand out among others say something. */
export function withoutCommonGrey<Row extends { readonly kind: string; readonly doubt?: RowDoubt }>(
  rows: readonly Row[],
): Row[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const common = (Object.keys(MOST_OF) as Faint[]).filter(
    (look) => readings.filter(({ doubt }) => doubt?.look === look).length > MOST_OF[look] * readings.length,
  )
  return rows.map((row) => {
    if (!row.doubt?.look || !common.includes(row.doubt.look)) return row
    const { doubt: _, ...plain } = row
    return plain as Row
  })
}
