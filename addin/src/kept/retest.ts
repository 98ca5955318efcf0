import { type FieldEntry, parseEntries, type TestEntries } from '../pane/one-test/entries.js'
import type { ListRow } from '../pane/one-test/lists.js'
import { atPath } from './at-path.js'
import { type KeptTest, newTest } from './kept-test.js'

/** What belongs to one day on site, and is entered again. */
const OF_THE_DAY = /^(conditions|plan)\.|^test\.(date|id|notes|stage)$/

/**
 * The next test of the same house: house, target, device and leak log are taken along, the day's own values and the
 * readings are not; the result so far stands among the earlier tests. Undefined where the entries cannot be read.
 */
export function retestOf({ entries: text, about, photos }: KeptTest): KeptTest | undefined {
  const entries = parseEntries(text)
  if (!entries) return undefined
  const { leaks, earlier } = {
    leaks: entries.lists?.['leaks.list'] ?? [],
    earlier: entries.lists?.['leaks.earlierTests'] ?? [],
  }
  const {
    'preparation.cautions': _,
    'test.openings': __,
    'site.round': ___,
    'site.setUp': ____,
    ...lists
  } = entries.lists ?? {}
  const retest: TestEntries = {
    version: 1,
    fields: { ...fieldsOf(entries, about.draft), 'test.stage': { text: 'retest' } },
    runs: {},
    lists: { ...lists, 'leaks.list': leaks, 'leaks.earlierTests': [...earlier, ...resultOf(about)] },
  }
  return { ...newTest(JSON.stringify(retest)), about: { name: about.name, standing: 'New test' }, photos }
}

/** Fields as typed; those taken from cells of the log as the values they had. */
function fieldsOf({ fields }: TestEntries, draft: KeptTest['about']['draft']): TestEntries['fields'] {
  return Object.fromEntries(
    Object.entries(fields)
      .filter(([path]) => !OF_THE_DAY.test(path))
      .flatMap(([path, entry]): [string, FieldEntry][] => {
        if ('text' in entry) return [[path, entry]]
        const value = valueAt(draft, path)
        return value === undefined ? [] : [[path, { text: String(value), kept: true }]]
      }),
  )
}

function resultOf({ date, airLeakageRate50_m3_h: q50 }: KeptTest['about']): ListRow[] {
  if (date === undefined || q50 === undefined) return []
  return [{ date, airLeakageRate50_m3_h: String(Number(q50.toPrecision(8))) }]
}

function valueAt(draft: unknown, path: string): string | number | undefined {
  const value = atPath(draft, path)
  return typeof value === 'number' || typeof value === 'string' ? value : undefined
}
