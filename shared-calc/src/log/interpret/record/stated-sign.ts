import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import { readLabel, says } from '../words/label.js'

/** What the log says of the sign of its pressures. */
export interface StatedSign {
  readonly order: 'inside minus outside' | 'outside minus inside'
  readonly cell: string
}

/** A sentence stands so many rows above the readings at most, or so many below them. */
const ABOVE = 40
const BELOW = 8
const MOST_CHARACTERS = 120

/** What stands between the two sides: "outdoor minus indoor", "außen - innen". */
const MINUS = /\s(?:minus|moins|menos|meno|min|miinus|weniger)\s|[-−–]/iu

/**
 * "Pressure: outdoor minus indoor", "Sign: inside - outside": the order that a log says its pressures are taken in.
 * @param forms - further sheets of the test
 */
export function statedSign(runs: readonly FoundRun[], forms: readonly View[]): StatedSign | undefined {
  const own = runs.map(({ view, top, bottom }) => statedIn(view, top - ABOVE, bottom + BELOW))
  return [...own, ...forms.map((view) => statedIn(view, 0, ABOVE))].find((one) => one)
}

function statedIn(view: View, from: number, to: number): StatedSign | undefined {
  for (let row = Math.max(0, from); row < Math.min(view.rows, to); row++)
    for (let column = 0; column < Math.min(view.columns, 30); column++) {
      const order = orderIn(view.text(row, column))
      if (order) return { order, cell: view.address(row, column) }
    }
  return undefined
}

function orderIn(text: string | undefined): StatedSign['order'] | undefined {
  if (text === undefined || text.length > MOST_CHARACTERS) return undefined
  const label = readLabel(text)
  if (says(label, 'temperature') || !says(label, 'inside') || !says(label, 'outside')) return undefined
  if (!says(label, 'pressure') && !OF_SIGN.test(label.padded)) return undefined
  const parts = text.split(MINUS).map(sideIn)
  const at = parts.findIndex((side, index) => side && parts[index + 1] && parts[index + 1] !== side)
  if (at < 0) return undefined
  return parts[at] === 'inside' ? 'inside minus outside' : 'outside minus inside'
}

const OF_SIGN = / (?:signs?|vorzeichen|signe|teken|tecken|fortegn|znak|signo|segno|sinal) /

function sideIn(text: string): 'inside' | 'outside' | undefined {
  const label = readLabel(text)
  const [inside, outside] = [says(label, 'inside'), says(label, 'outside')]
  return inside === outside ? undefined : inside ? 'inside' : 'outside'
}
