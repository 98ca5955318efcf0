import { grouped } from './grouped.js'
import type { TestClass } from './test-classes.js'
import type { TestLine } from './test-line.js'

/** A test on its way to its place in the register. */
export interface Draft {
  readonly line: TestLine
  role: TestClass
  /** A further copy of a test. */
  aside?: true
  latest?: true
  of?: Draft
  supersededBy?: Draft
  remark?: string
}

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })
/** `plot-1-reissued` comes after `plot-1`, which it would not with the ending. */
const stem = ({ line }: Draft): string => line.file.replace(/\.[^./\\]*$/, '')

/**
 * Sets further copies of a test aside: the same record in another file, and earlier issues of a test that was issued
 * again. A copy that was altered never stands in for one that was not.
 */
export function setCopiesAside(tests: readonly Draft[]): void {
  for (const group of alike(tests, ({ line }) => line.recordDigest)) {
    const kept = group.find(sound) ?? group[0]
    for (const copy of group) if (kept && copy !== kept) setAside(copy, kept, 'duplicate')
  }
  const issues = tests.filter(({ aside, line }) => !aside && line.testNumber !== undefined)
  for (const group of alike(issues, ({ line }) =>
    [line.testNumber, line.date, line.readingsDigest].join('|'),
  )) {
    const byName = [...group].sort((a, b) => collator.compare(stem(a), stem(b)))
    const kept = byName.filter(sound).at(-1) ?? byName.at(-1)
    for (const copy of group) if (kept && copy !== kept) setAside(copy, kept, 'earlier issue')
  }
}

const sound = ({ line }: Draft): boolean => line.altered === undefined

function setAside(copy: Draft, kept: Draft, role: 'duplicate' | 'earlier issue'): void {
  copy.aside = true
  copy.of = kept
  if (!sound(copy)) return
  copy.role = role
  copy.remark =
    role === 'duplicate'
      ? 'the same record in another file'
      : 'issued again: same test number, date and readings. The last by file name is taken as the reissue'
}

function alike(tests: readonly Draft[], keyOf: (test: Draft) => string): Draft[][] {
  return [...grouped(tests, keyOf).values()].filter(({ length }) => length > 1)
}
