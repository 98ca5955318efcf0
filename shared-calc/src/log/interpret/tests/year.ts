import { questions } from '../../../catalogue/questions.js'
import type { Draft } from '../record/draft.js'
import type { TestGroup } from './group.js'

const yearIn = (text: string): string | undefined => /(?<!\d)(?:19|20)\d\d(?!\d)/.exec(text)?.[0]

/** Readings headed with another year than that of their date, as last year's beside this year's: asked which are meant. */
export function askYear(draft: Draft, { key }: TestGroup, groups: readonly TestGroup[]): void {
  const { date } = (draft.record.test ?? {}) as { date?: string }
  const year = yearIn(key)
  if (groups.length < 2 || date === undefined || year === undefined || date.startsWith(year)) return
  draft.ask({
    path: 'test',
    cells: groups.flatMap(({ runs }) => runs[0]?.block.pressure.headingCell ?? []),
    ...questions.testOfYear({ title: key, date, tests: groups.map((group) => group.key) }),
  })
}
