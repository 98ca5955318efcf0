import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findingCatalogue } from '../../../shared-calc/src/catalogue/findings/index.js'
import { coinedPhrases, equalToLimit, fieldPath, slips } from './coined-phrases'
import { elsewhere, ids, logIds, made, ofRules } from './every-message'

const folder = 'shared-calc/src/catalogue/findings/'
/** A list of what was assumed, and cautions in full: they are as long as what they must name. */
const LONG: readonly string[] = ['assumed-uncertainty', 'caution-unanswered']

describe('the catalogue of findings', () => {
  it('holds every entry of its files once', () => {
    const written = (inside: string) =>
      readdirSync(inside, { withFileTypes: true })
        .filter((entry) => entry.isFile())
        .flatMap(({ name }) => [
          ...readFileSync(join(inside, name), 'utf8').matchAll(
            /^ {2}'?([a-z][a-z0-9/-]+)'?: \{(?:$| severity)/gm,
          ),
        ])
        .map(([, id]) => id)
        .sort()
    expect(written(folder)).toEqual([...ids, ...Object.keys(elsewhere)].sort())
    expect(written(`${folder}log`)).toEqual([...logIds].sort())
    expect(ids.length).toBeGreaterThan(90)
    expect(logIds.length).toBeGreaterThan(50)
  })

  it('gives the published rule, which has no case in its name', () => {
    for (const { id, rule } of made)
      expect([id, `${id}/`.startsWith(`${rule}/`), rule.includes('/')]).toEqual([id, true, false])
  })

  it('marks every message that begins with its direction, and no other: such are said once where both directions have them', () => {
    const begins = ofRules.filter(({ message }) => /^(De)?[Pp]ressurisation: /.test(message))
    expect(new Set(begins.map(({ id }) => id))).toEqual(
      new Set(ids.filter((id) => 'ofOneDirection' in findingCatalogue[id])),
    )
  })

  it('says what to do about every finding of a rule, and about all others that are more than a note', () => {
    for (const { remedy } of ofRules) expect(remedy).toBeTruthy()
    const silent = made.filter(({ severity, remedy }) => severity !== 'note' && !remedy)
    expect(silent.map(({ id }) => id)).toEqual([])
  })

  it('names an option only as one of the command line, as the page has none', () => {
    for (const { message, remedy = '' } of made)
      expect(`${message} ${remedy}`.replace(/On the command line: .*/, '')).not.toMatch(/--[a-z]/)
  })

  it.each(made)('$id: $message $remedy', ({ id, message, remedy = '' }) => {
    for (const text of remedy === '' ? [message] : [message, remedy]) {
      expect(text).toMatch(/^["A-Z0-9]/)
      expect(text).toMatch(/[.]$/)
      expect(text).not.toMatch(/ {2}|undefined|NaN|\[object|Infinity| [.,;]|\.\./)
      expect(text).not.toMatch(fieldPath)
      // A minus sign is U+2212; a unit is apart from its number; thousands and decimals as British engineers write them.
      expect(text).not.toMatch(/(^|[\s(])-\d/)
      expect(text).not.toMatch(/\d(Pa|m|s|m³|m²|cm²|K|%|h)\b|\d%|\d,\d/)
      expect(text).not.toMatch(/\b1 (readings|values|parts|areas|tests|ranges)\b/)
      expect(text).not.toMatch(/\d{4}-\d{2}-\d{2}/)
      for (const phrase of [...coinedPhrases, ...slips, equalToLimit]) expect(text).not.toMatch(phrase)
      // A sentence begins with a capital letter, unless with a symbol or a quotation.
      expect(text).not.toMatch(/[.?] (?!n50|q)[a-z]/)
      if (!/1 \S+ = /.test(text)) expect(text).not.toMatch(/\d\.\d{6}|\d{8}/)
    }
    if (LONG.includes(id)) return
    expect(message.length).toBeLessThanOrEqual(220)
    expect(remedy.length).toBeLessThanOrEqual(160)
    for (const sentence of `${message} ${remedy}`.split(/[.:;] /))
      expect(sentence.split(' ').length).toBeLessThanOrEqual(32)
  })
})

/** Text of messages outside the catalogue: a finding's sentence may stand nowhere else. */
const sources = (start: string): string[] =>
  readdirSync(start, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))

it('no finding is written outside the catalogue', () => {
  const all = [...sources('shared-calc/src'), ...sources('service/src'), ...sources('addin/src')].filter(
    (file) => !/\/versions\/frozen\/|\/catalogue\/findings\//.test(file),
  )
  expect(all.length).toBeGreaterThan(500)
  // A finding made in place has its weight beside its text; one of the catalogue has neither.
  const own = all.filter((file) =>
    /\bseverity: '(note|caution|invalidates)',\s*(rule|message)|\brule: '[a-z-]+'|\b(finding|add|tell)\(\s*'(note|caution|invalidates)',\s*['`]/.test(
      readFileSync(file, 'utf8'),
    ),
  )
  expect(own).toEqual([])
})
