import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { checkSync } from 'recheck'
import { describe, expect, it } from 'vitest'
import { regularExpressions } from './regular-expressions'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
/** Patterns that recheck has judged linear: judging all of them anew takes a minute. `npm run patterns` does that. */
const LIST = fileURLToPath(new URL('./linear-patterns.txt', import.meta.url))
const isUpdate = process.env.JUDGE_PATTERNS === '1'

/** Patterns that only ever see what this program has written itself a moment before, by the start of where they stand. */
const OWN_TEXT = ['addin/src/worker/for-insertion.ts', 'shared-calc/src/reports/workbook/chart/']

/** Issued versions hold copies of them. */
const FROZEN = 'shared-calc/src/versions/frozen/'

const isOwn = (where: readonly string[]) => {
  const ofToday = where.filter((place) => !place.startsWith(FROZEN))
  return ofToday.length > 0 && ofToday.every((place) => OWN_TEXT.some((start) => place.startsWith(start)))
}

// recheck: https://makenowjust-labs.github.io/recheck/, a published checker for regular expressions that backtrack.
const isLinear = (source: string, flags: string): boolean =>
  checkSync(source, flags, { timeout: 60_000 }).status === 'safe'

describe('every regular expression of the program', () => {
  it('takes no more than linear time, whatever text it is given', () => {
    const found = regularExpressions(ROOT).filter(({ where }) => !isOwn(where))
    expect(found.length).toBeGreaterThan(100)
    const known = new Set(isUpdate ? [] : readFileSync(LIST, 'utf8').split('\n'))
    const judged = found.map((one) => ({ ...one, text: `/${one.source}/${one.flags}` }))
    const slow = judged.filter(({ text, source, flags }) => !known.has(text) && !isLinear(source, flags))
    expect(slow.map(({ text, where }) => `${text} in ${where.join(', ')}`)).toEqual([])
    if (isUpdate)
      writeFileSync(
        LIST,
        `${judged
          .map(({ text }) => text)
          .sort()
          .join('\n')}\n`,
      )
  }, 600_000)

  it('would be found out: a pattern that backtracks is not taken for a linear one', () => {
    expect(isLinear('^(.*?)\\s*[(]\\s*([^()]*?)\\s*[)]\\s*$', 's')).toBe(false)
    expect(isLinear('\\s+$', '')).toBe(false)
    expect(isLinear('^\\d+$', '')).toBe(true)
  })
})
