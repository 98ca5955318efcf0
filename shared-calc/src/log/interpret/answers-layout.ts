import { eachCell, type Grid } from '../grid/grid.js'
import { LAYOUT_FORMAT, type LayoutInput } from '../layout/schema.js'
import type { Answers, Interpretation } from './interpretation.js'

/** Answers that hold for every log of a make; the others are of one test. */
const OF_THE_MAKE =
  /^(?:(?:flow|pressure|device|volume|temperature|barometer)\.unit|(?:pressure|flow)\.column|zeroFlow\.(?:sign|labels)|readings\.grey|flowStatedAt|device\.range|decimal|target\.preset|test\.(?:method|stage|tester|organisation|preparation)|building\.volumeBasis|date\.order)$/

const MOST_LABELS = 60

/**
 * What was answered about a log, as a layout for others of its make: they are read the same way, with the same answers.
 * Its fingerprint is the labels and headings the log was read by; values, longer tables and other sheet names do not matter.
 */
export function answersLayout(
  grid: Grid,
  { uses }: Interpretation,
  answers: Answers,
  name: string,
): LayoutInput {
  const used = uses.filter(({ usedAs }) => usedAs !== undefined).map(({ heading }) => heading.trim())
  const texts = new Set(visibleTexts(grid))
  const labels = [...new Set(used)].filter(
    (label) => label.length > 0 && label.length <= 200 && texts.has(label),
  )
  return {
    format: LAYOUT_FORMAT,
    name: name.slice(0, 200),
    fingerprint: { labels: labels.slice(0, MOST_LABELS) },
    fields: [],
    answers: Object.fromEntries(Object.entries(answers).filter(([path]) => OF_THE_MAKE.test(path))),
  }
}

function* visibleTexts(grid: Grid): Iterable<string> {
  for (const name of grid.sheetNames) {
    const sheet = grid.sheet(name)
    if (!sheet || sheet.hidden) continue
    for (const [, , cell] of eachCell(sheet)) if (cell.kind === 'text') yield String(cell.value).trim()
  }
}
