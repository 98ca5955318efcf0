import type { Remark } from '../../catalogue/findings/remark.js'
import type { Faint } from '../grid/grid.js'
import { readNumberText } from './number-text.js'
import { findUnit, type KnownUnit } from './units.js'

/** A number somebody wrote into a cell, in the unit the cell itself states, if any. */
export interface Written {
  readonly value: number
  readonly unit?: KnownUnit
  /** Where the unit stands if not in the cell. */
  readonly unitBy?: 'format' | 'heading'
  /** What else is in the cell: "(gusty)". */
  readonly note?: string
  /** The other reading of a number like "1,234". */
  readonly other?: number
  /** Written or shaded in grey. */
  readonly faint?: Faint
  /** Written in brackets, as book-keepers write what is negative; its value is. */
  readonly bracketed?: true
  /** What is to be said about how the cell was read, whatever the number is used for. */
  readonly remarks?: readonly Remark[]
}

/** Stands for the sign in front of an approximate number. */
export const APPROXIMATE = 'approximate'

/** A number with its unit and a remark; undefined where the text is more than that. */
export function writtenIn(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  return inBrackets(text, decimal) ?? plainIn(text, decimal)
}

/** "(55.2)", "(1.2) Pa": negative. "(1)" numbers a column and "(2026)" is a year: neither is meant. */
function inBrackets(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  const [, inner = '', rest = ''] = /^\(\s*([\d.,]+)\s*\)\s*(\S*)$/.exec(text) ?? []
  const written = inner === '' ? undefined : plainIn(`${inner} ${rest}`.trim(), decimal)
  if (!written || (/^\d+$/.test(inner) && (written.value < 10 || written.value > 200))) return undefined
  return { ...written, value: -written.value, bracketed: true }
}

function plainIn(text: string, decimal: '.' | ',' | undefined): Written | undefined {
  const bare = text.replace(/^[~≈≃]\s*|^(?:ca|approx)\.?\s+/i, '')
  const read = readNumberText(bare, decimal)
  if (!read) return undefined
  if ('ambiguous' in read) {
    const [grouped, fraction] = read.ambiguous
    const unit = findUnit(/^[^\d.,]*[\d.,]+\s*([\s\S]*)$/.exec(bare)?.[1] ?? '')
    return { value: grouped, other: fraction, ...(unit ? { unit } : {}) }
  }
  const { value, rest } = read
  // "62.0-": book-keepers' programs write the sign behind.
  if (/^[^-−]*\d[-−]$/.test(bare)) return { value: -value }
  if (rest === '') return bare === text ? { value } : { value, note: APPROXIMATE }
  // "21.5°": of which scale, what stands around it tells.
  if (rest === '°') return { value }
  const unit = findUnit(rest)
  if (unit) return { value, unit }
  const spread = /^(?:±|\+\/-|\+-)\s*[\d.,]+\s*([\s\S]*)$/.exec(rest)
  if (spread) {
    const after = spread[1] ? findUnit(spread[1]) : undefined
    return { value, ...(after ? { unit: after } : {}), note: rest }
  }
  // "20 °C ± 0.5": the unit is in front of the spread.
  const plus = rest.search(/±|\+\/-/)
  const before = plus > 0 ? findUnit(rest.slice(0, plus)) : undefined
  if (before) return { value, unit: before, note: rest.slice(plus) }
  const cut = remarkAt(rest)
  if (cut < 0) return undefined
  const head = rest.slice(0, cut).trim()
  const note = rest.slice(cut).trim()
  const headUnit = head === '' ? undefined : findUnit(head)
  if (head !== '' && !headUnit) return undefined
  if (/^\(?\s*(?:neg(?:ative|ativ|atif|ativo)?|minus)\.?\s*\)?$/i.test(note))
    return { value: -Math.abs(value), ...(headUnit ? { unit: headUnit } : {}) }
  // A second number is not a remark.
  if (/^[;,]\s*[-−–+]?\d/.test(note)) return undefined
  return { value, ...(headUnit ? { unit: headUnit } : {}), note }
}

/** Where a remark begins that is in brackets, behind a mark, or is a word without figures; −1: there is none. */
function remarkAt(rest: string): number {
  const bracket = rest.search(/[([]/)
  if (bracket >= 0) return bracket
  const mark = rest.search(/[*!?;,]/)
  if (mark >= 0) return mark
  const words = rest.split(/\s+/)
  if (/\d/.test(words.slice(1).join(' '))) return -1
  const unit = findUnit(words[0] ?? '')
  return unit && (words[0] ?? '').length > 1 ? rest.indexOf(' ') : -1
}
