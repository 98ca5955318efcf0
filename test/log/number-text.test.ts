import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readDateText } from '../../shared-calc/src/log/cells/dates'
import { readNumberText } from '../../shared-calc/src/log/cells/number-text'

/** How the runtime's own Intl writes numbers, by language: an implementation of Unicode CLDR, not of ours. */
const LANGUAGES = {
  'en-GB': '.',
  'de-DE': ',',
  'fr-FR': ',',
  'de-CH': '.',
  'pl-PL': ',',
  'en-IN': '.',
} as const

describe('a number as text', () => {
  it('is read as it was written by Intl in six languages, once the decimal sign is known', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...(Object.keys(LANGUAGES) as (keyof typeof LANGUAGES)[])),
        fc.integer({ min: -99_999_999, max: 99_999_999 }),
        fc.integer({ min: 0, max: 4 }),
        fc.boolean(),
        (language, digits, places, grouped) => {
          const value = digits / 10 ** places
          // India groups by two above a thousand; such numbers are not understood, and refused.
          fc.pre(language !== 'en-IN' || Math.abs(value) < 100_000 || !grouped)
          const text = value.toLocaleString(language, {
            useGrouping: grouped,
            minimumFractionDigits: places,
            maximumFractionDigits: places,
          })
          expect(readNumberText(text, LANGUAGES[language]), text).toMatchObject({
            value: value === 0 ? expect.any(Number) : value,
            rest: '',
          })
        },
      ),
      { numRuns: 3000, seed: 9972 },
    )
  })

  it('is never read two ways without a word: it is right, or ambiguous', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -999_999, max: 999_999 }),
        fc.integer({ min: 0, max: 4 }),
        fc.constantFrom('en-GB', 'de-DE'),
        (digits, places, language) => {
          const value = digits / 10 ** places
          const text = value.toLocaleString(language, {
            minimumFractionDigits: places,
            maximumFractionDigits: places,
          })
          const read = readNumberText(text)
          if (read && 'ambiguous' in read) expect(read.ambiguous).toContain(value)
          else expect(read?.value, text).toBeCloseTo(value, 10)
        },
      ),
      { numRuns: 3000, seed: 9972 },
    )
  })

  it.each(['1,234', '1.234', '12,345', '-999.999'])('%s is ambiguous', (text) => {
    expect(readNumberText(text)).toHaveProperty('ambiguous')
  })

  it.each(['1,2,3', '1.234,567.8', '12,34,567', '1 2345', '', 'Pa 50', '--5', '1.2.3'])(
    '%s is no number',
    (text) => {
      const read = readNumberText(text)
      expect(read === undefined || ('rest' in read && read.rest !== '')).toBe(true)
    },
  )
})

describe('a date as text', () => {
  const days = fc.date({ min: new Date('1990-01-01'), max: new Date('2090-12-31'), noInvalidDate: true })
  const iso = (date: Date) => date.toISOString().slice(0, 10)

  it('is read as it was written by Intl in words', () => {
    fc.assert(
      fc.property(
        days,
        fc.constantFrom('en-GB', 'en-US', 'de-DE', 'fr-FR'),
        fc.constantFrom('long' as const, 'short' as const),
        (date, language, month) => {
          const text = date.toLocaleDateString(language, {
            day: 'numeric',
            month,
            year: 'numeric',
            timeZone: 'UTC',
          })
          expect(readDateText(text), text).toEqual({ date: iso(date), shortYear: false })
        },
      ),
      { numRuns: 1500, seed: 1 },
    )
  })

  it('in figures is right when the order is known, and else right or ambiguous', () => {
    fc.assert(
      fc.property(
        days,
        fc.constantFrom(['en-GB', 'dmy'] as const, ['en-US', 'mdy'] as const),
        (date, [language, order]) => {
          const text = date.toLocaleDateString(language, { timeZone: 'UTC' })
          expect(readDateText(text, order)).toEqual({ date: iso(date), shortYear: false })
          const unknown = readDateText(text)
          if (unknown && 'ambiguous' in unknown) expect(unknown.ambiguous).toContain(iso(date))
          else expect(unknown).toEqual({ date: iso(date), shortYear: false })
        },
      ),
      { numRuns: 1500, seed: 1 },
    )
  })
})

describe('a fraction of an inch', () => {
  it.each([
    ['29 1/2', 29.5, ''],
    ['29 3/4 inHg', 29.75, 'inHg'],
    ['-1 5/8', -1.625, ''],
  ])('%s is read', (text, value, rest) => {
    expect(readNumberText(text)).toEqual({ value, rest, comma: false, grouped: false })
  })

  it.each(['29 1/3', '3 1/2/2026', '29 2/2'])('%s is none', (text) => {
    expect(readNumberText(text)).toBeUndefined()
  })
})

describe('a Hungarian date', () => {
  it.each(['2026.05.14.', '2026. 05. 14.', '2026. 5. 14'])('%s is 14 May', (text) => {
    expect(readDateText(text)).toEqual({ date: '2026-05-14', shortYear: false })
  })
})
