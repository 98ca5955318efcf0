import { describe, expect, it } from 'vitest'
import { questions } from '../../../shared-calc/src/catalogue/questions.js'
import { coinedPhrases, fieldPath, slips } from './coined-phrases'
import { asked } from './every-question'

describe('the questions about a log', () => {
  it.each(asked)('$id: $text', ({ text, choices }) => {
    expect(text).toMatch(/^[A-Z"]/)
    expect(text).toContain('?')
    expect(text).toMatch(/[?.]$/)
    expect(text.length).toBeLessThanOrEqual(220)
    for (const one of [text, ...choices.flatMap(({ label, reason = '' }) => [label, reason])]) {
      expect(one).not.toMatch(/ {2}|undefined|NaN|\[object/)
      expect(one).not.toMatch(fieldPath)
      // A minus sign is U+2212, outside what the log says itself.
      expect(one.replace(/"[^"]*"/g, '')).not.toMatch(/(^|[\s(])-\d/)
      for (const phrase of [...coinedPhrases, ...slips]) expect(one).not.toMatch(phrase)
    }
  })

  it('a date that may be read two ways offers both, the likelier first', () => {
    const dates = ['2026-04-03', '2026-03-04']
    const first = (monthFirst: boolean) => questions.whichDate({ dates, monthFirst }).choices[0]?.label
    expect([first(false), first(true)]).toEqual(['3 April 2026', '4 March 2026'])
  })
})
