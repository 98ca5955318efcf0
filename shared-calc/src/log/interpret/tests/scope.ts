import type { FieldName } from '../fields/classify.js'
import type { FoundField } from '../fields/found-field.js'
import { overTest } from '../fields/over-each-test.js'
import type { View } from '../grid/view.js'
import { readLabel, says, wordsOf } from '../words/label.js'
import type { TestGroup } from './test-group.js'

/** Single values that belong to one test, nearest first. */
export interface FieldScope {
  all(name: FieldName): readonly FoundField[]
}

/** Which values of a log belong to a test: those of its rows, then of its part of the sheet, then of other sheets. */
export function scopeOf(
  group: TestGroup,
  groups: readonly TestGroup[],
  fields: readonly FoundField[],
  rowFields: readonly FoundField[],
): FieldScope {
  const sheets = new Set([
    ...group.runs.map(({ view }) => view.name),
    ...group.series.map(({ view }) => view.name),
  ])
  const foreign = new Set(
    groups
      .filter((one) => one !== group)
      .flatMap((one) => [
        ...one.runs.map(({ view }) => view.name),
        ...one.series.map(({ view }) => view.name),
      ])
      .filter((name) => !sheets.has(name)),
  )
  const others = groups.filter((one) => one !== group)
  const belongs = (field: FoundField): boolean => {
    const { name } = field.view
    if (field.view.sheet.hidden && !group.hidden) return false
    if (foreign.has(name)) return false
    // A sheet named after another test holds that test's values.
    return sheets.has(name) || !others.some((one) => isNamedAfter(field.view, one, group))
  }
  const usable = fields.filter(belongs)
  const spans = spansBeside(group, groups)
  return {
    all(name) {
      const own = rowFields.filter((field) => field.name === name)
      if (own.some(({ ofReadings }) => !ofReadings)) return own
      const named = usable.filter((field) => field.name === name)
      const near = named.filter(({ view }) => sheets.has(view.name))
      const zoned = zone(near, usable, spans)
      return [...zoned, ...named.filter(({ view }) => !sheets.has(view.name)), ...own]
    },
  }
}

function isNamedAfter(view: View, other: TestGroup, group: TestGroup): boolean {
  const [sheet, key, own] = [view.name, other.key, group.key].map((name) => wordsOf(name).join(' '))
  if (!key || key === own) return false
  return (key.length > 1 && sheet === key) || numberIn(view.name) === key
}

/** "1" of "Test 1", "House 1": a sheet with the form of the test that other sheets have the runs of. */
const numberIn = (sheet: string): string | undefined => {
  const words = wordsOf(sheet)
  const [number, ...more] = words.filter(
    (word) => !OF_SHEETS.some((concept) => says(readLabel(word), concept)),
  )
  return more.length === 0 && words.length > 1 ? number : undefined
}

/** "Mesure" is among the words for what was measured in a building. */
const OF_SHEETS = ['test', 'name', 'testId', 'building'] as const

/** Values of a test stand so many rows below its readings at most. */
const ROWS_BELOW = 3

interface Span {
  readonly top: number
  readonly bottom: number
  readonly left: number
  readonly right: number
}

/** Where a run stands on its sheet, whichever way it is read. */
const uprightSpan = ({ view, top, bottom, left, right }: TestGroup['runs'][number]): Span =>
  view.turned ? { top: left, bottom: right, left: top, right: bottom } : { top, bottom, left, right }

/** Where a test stands on its sheet, and all that stand there; undefined where it has the sheet for itself. */
function spansBeside(
  group: TestGroup,
  groups: readonly TestGroup[],
): { mine: Span; spans: readonly Span[] } | undefined {
  const [first] = group.runs
  if (!first) return undefined
  const onSheet = groups.filter((one) => one.runs.some(({ view }) => view.name === first.view.name))
  if (onSheet.length < 2) return undefined
  const spans = onSheet.map(({ runs }) => {
    const own = runs.map(uprightSpan)
    return {
      top: Math.min(...own.map(({ top }) => top)),
      bottom: Math.max(...own.map(({ bottom }) => bottom)),
      left: Math.min(...own.map(({ left }) => left)),
      right: Math.max(...own.map(({ right }) => right)),
    }
  })
  return { mine: spans[onSheet.indexOf(group)] as Span, spans }
}

/** Of values that stand on a sheet of several tests, those nearest to this one. */
function zone(
  near: readonly FoundField[],
  usable: readonly FoundField[],
  ofSheet: ReturnType<typeof spansBeside>,
): readonly FoundField[] {
  if (!ofSheet || near.length === 0) return near
  const { mine, spans } = ofSheet
  const beside = spans.filter((span) => span !== mine && span.top <= mine.bottom && span.bottom >= mine.top)
  if (beside.length > 0) {
    const start = Math.max(-1, ...beside.filter(({ right }) => right < mine.left).map(({ right }) => right))
    // Infinity behind the last of them.
    const end = Math.min(...beside.filter(({ left }) => left > mine.right).map(({ left }) => left))
    const within = near.filter(({ column }) => column > start && column < end)
    // The form of the house before may be wider than its readings: what stands over this one's columns goes first. Right of them it may
    // be of the next house, in front of its columns.
    const last = Number.isFinite(end) ? mine.right : end
    const over = within.filter(({ column }) => column >= mine.left && column <= last)
    const own = over.length > 0 ? over : within
    const shared = own.length > 0 ? own : near
    const behind = overTest(shared, usable, mine)
    return behind.length > 0 ? behind : shared
  }
  if (near.length < 2) return near
  const above = Math.max(-1, ...spans.filter(({ bottom }) => bottom < mine.top).map(({ bottom }) => bottom))
  // What stands below the readings is theirs only where nothing of its kind stands above them: else it heads the next test.
  for (const end of [mine.bottom, mine.bottom + ROWS_BELOW]) {
    const own = near.filter(({ row }) => row > above && row <= end)
    if (own.length > 0) return own
  }
  // Values at the head of the sheet serve every test on it.
  const firstTop = Math.min(...spans.map(({ top }) => top))
  const shared = near.filter(({ row }) => row < firstTop)
  return shared.length > 0 ? shared : near
}

/** Whether a sheet's name holds a test's name. */
export const saysName = (view: View, key: string): boolean =>
  readLabel(view.name).padded.includes(` ${wordsOf(key).join(' ')} `)
