import { questions } from '../../../catalogue/questions.js'
import type { Draft } from '../record/draft.js'
import { readLabel, says } from '../words/label.js'
import type { TestGroup } from './test-group.js'

/**
 * "2", the name, or the beginning of the name of a test; or that of its building, where no other test is of it.
 * @param buildingOf - name of the building that the log gives for a test
 */
export function chooseTest(
  groups: readonly TestGroup[],
  wanted: string,
  buildingOf: (group: TestGroup) => string | undefined,
): TestGroup[] | undefined {
  const plain = wanted.trim().toLowerCase()
  const exact = groups.filter(({ key }) => key.toLowerCase() === plain)
  if (exact.length > 0) return exact
  const starting = groups.filter(({ key }) => key.toLowerCase().startsWith(plain))
  const number = /^\d{1,3}$/.test(plain) ? groups[Number(plain) - 1] : undefined
  if (number) return [number]
  if (starting.length === 1) return starting
  const ofBuilding = groups.filter((group) => buildingOf(group)?.trim().toLowerCase() === plain)
  return ofBuilding.length === 1 ? ofBuilding : undefined
}

const yearIn = (text: string): string | undefined => /(?<!\d)(?:19|20)\d\d(?!\d)/.exec(text)?.[0]

/** Readings headed "last year", or with another year than that of their date, as last year's beside this year's: asked which are meant. */
export function askYear(draft: Draft, { key }: TestGroup, groups: readonly TestGroup[]): void {
  const { date } = (draft.record.test ?? {}) as { date?: string }
  const { name } = (draft.record.building ?? {}) as { name?: string }
  // "2025 Oak Avenue" is where the house stands.
  const year = name?.trim() === key.trim() ? undefined : yearIn(key)
  const isOther = year === undefined ? says(readLabel(key), 'former') : !date?.startsWith(year)
  if (groups.length < 2 || date === undefined || !isOther) return
  draft.ask({
    path: 'test',
    cells: groups.flatMap(({ runs }) => runs[0]?.block.pressure.headingCell ?? []),
    ...questions.testOfYear({ title: key, date, tests: groups.map((group) => group.key) }),
  })
}
