import type { View } from '../grid/view.js'
import { powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import { beginsExample } from '../words/example.js'
import { readLabel, says } from '../words/label.js'
import { directionOf, type TestGroup } from './test-group.js'

/** The last row of the tests above a run on its sheet. */
export const endAbove = (first: FoundRun, groups: readonly TestGroup[]): number =>
  Math.max(
    -1,
    ...groups
      .flatMap((group) => group.runs)
      .filter((one) => one.view.name === first.view.name && one.bottom < first.top)
      .map(({ bottom }) => bottom),
  )

/** Titles stand so many rows above the headings at most. */
const TITLE_ROWS = 8

/** Words alone in a line right above the headings of a run. */
export function lineAbove({
  view,
  block,
  left,
  right,
}: FoundRun): { title: string; cell: string } | undefined {
  if (view.turned) return undefined
  for (let row = block.segment.head.top - 1; row >= Math.max(0, block.segment.head.top - 3); row--) {
    const held = Array.from({ length: right - left + 2 }, (_, index) => view.at(row, left + index))
    const text = view.text(row, left)
    if (held.every((one) => !one)) continue
    const isAlone = text !== undefined && held.filter((one) => one).length === 1
    return isAlone ? { title: text, cell: view.address(row, left) } : undefined
  }
  return undefined
}

/** A line above the readings that says they do not count: "Test 1: invalid, window open". */
export function refusalOf({ runs }: TestGroup, groups: readonly TestGroup[]): TestGroup['refusedBy'] {
  const [first] = runs
  if (!first || first.view.turned || first.row !== undefined) return undefined
  const { view, top, block } = first
  if (groups.length > 1 && says(readLabel(view.name), 'example'))
    return { title: view.name, cell: view.address(top, first.left) }
  const above = Math.max(endAbove(first, groups), top - TITLE_ROWS)
  const headed = groups.every((one) => one.runs === runs || one.runs.every((run) => run.view !== view))
    ? headOfSheet(view, top, groups.length > 1)
    : undefined
  if (headed) return headed
  // A title right over the headings is the first line of them.
  for (let row = Math.max(top - 1, block.segment.head.first - 2); row > above; row--)
    for (let column = Math.max(0, first.left - 1); column <= first.right; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 80 || view.at(row, column + 1)) continue
      const label = readLabel(text)
      if (says(label, 'zero') || label.tokens.length > 10) continue
      if (says(label, 'leftOut') || says(label, 'brokenOff'))
        return { title: text, cell: view.address(row, column) }
    }
  return undefined
}

/**
 * Pressures and flows beside a test of the house that were not measured on it: figures read off a curve below "Evaluation", and without a
 * direction those of a sheet or below a line that says "Ducts", or all at one pressure, as in a list of leaks.
 */
export function ofOtherKind({ runs }: TestGroup, groups: readonly TestGroup[]): TestGroup['refusedBy'] {
  const [first] = runs
  if (!first) return undefined
  const { view, top, block } = first
  const above = view.turned ? top : Math.max(endAbove(first, groups), top - TITLE_ROWS)
  const rows = view.turned ? 0 : Math.max(0, block.segment.head.first - 1 - above)
  const titles = Array.from({ length: rows }, (_, index) => block.segment.head.first - 1 - index).flatMap(
    (row) => {
      const text = view.text(row, first.left) ?? view.text(row, 0)
      return text === undefined || text.length > 60
        ? []
        : [{ title: text, cell: view.address(row, first.left) }]
    },
  )
  const { label: heading, headingCell } = block.pressure
  const named = [
    { title: heading.text, cell: headingCell },
    ...titles,
    { title: view.name, cell: view.address(top, first.left) },
  ]
  const saying = (concept: 'otherSystem' | 'evaluated') =>
    named.find(({ title }) => says(readLabel(title), concept))
  const [ofOther, evaluated, isAlike] = [
    saying('otherSystem'),
    saying('evaluated'),
    runs.every(isAtOnePressure),
  ]
  // Whether flows lie on a curve to the last digit is worked out only where a word asks for it.
  if (!ofOther && !evaluated && !isAlike) return undefined
  const isOfCurve = runs.every(isExact)
  const isOfHouse = (one: TestGroup) =>
    one.runs.some((run) => directionOf(run) !== undefined) && !one.runs.every(isExact)
  if (!isOfCurve && runs.some(({ direction }) => direction !== undefined)) return undefined
  if (!groups.some(isOfHouse)) return undefined
  return ofOther ?? (isOfCurve ? evaluated : undefined) ?? (isAlike ? titles.at(-1) : undefined)
}

/** Whole pressures with flows that lie on their curve to the last digit: figures read off it. */
const isExact = ({ readings }: FoundRun): boolean => {
  if (readings.length < FEWEST_OF_CURVE) return false
  if (!readings.every(({ pressure }) => Number.isInteger(pressure.value))) return false
  const law = powerLaw(
    readings.map(({ pressure }) => pressure.value),
    readings.map(({ carriers }) => carriers[0]?.value ?? 0),
  )
  return law !== undefined && law.rSquared > EXACT
}

const FEWEST_OF_CURVE = 4
/** Coefficient of determination that readings of a house, with wind and a gauge that shows tenths, do not reach. */
const EXACT = 0.99999

const isAtOnePressure = ({ readings }: FoundRun): boolean =>
  readings.length > 1 && readings.every(({ pressure }) => pressure.value === readings[0]?.pressure.value)

/**
 * "INVALID: too much wind" at the head of a sheet that holds one test, as the first word: a rule says when a test is so. Beside other
 * tests, "Example" too.
 */
function headOfSheet(view: View, top: number, hasOthers: boolean): TestGroup['refusedBy'] {
  for (let row = 0; row < Math.min(top, HEAD_ROWS); row++)
    for (let column = 0; column < Math.min(view.columns, HEAD_COLUMNS); column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 80 || view.at(row, column + 1)) continue
      const { tokens } = readLabel(text)
      const first = readLabel(tokens.slice(0, tokens[0] === 'test' ? 2 : 1).join(' '))
      // "Template" is no such word: real tests are kept on copies of one.
      const isExample = hasOthers && says(first, 'example') && beginsExample(text)
      const isRefused = says(first, 'leftOut') || says(first, 'brokenOff') || isExample
      if (isRefused && !tokens.some((token) => CONDITIONS.test(token)))
        return { title: text, cell: view.address(row, column) }
    }
  return undefined
}

const HEAD_ROWS = 4
const HEAD_COLUMNS = 10
const CONDITIONS = /^(?:if|when|unless|wenn|falls|sofern|si|als|indien|om|hvis|jos|jesli|gdy|se|pokud)$/
