import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { finding } from '../../../shared-calc/src/catalogue/findings/finding.js'
import { type FindingId, findingCatalogue } from '../../../shared-calc/src/catalogue/findings/index.js'
import { coinedPhrases, fieldPath } from './coined-phrases'
import { samples } from './samples'

const folder = 'shared-calc/src/catalogue/findings/'
const ids = Object.keys(findingCatalogue) as FindingId[]

const made = ids.flatMap((id) => {
  const given: readonly unknown[] = samples[id].length === 0 ? [undefined] : samples[id]
  return given.map((params) => ({
    id,
    ...(
      finding as (id: FindingId, facts: { where: string[] }, params: unknown) => ReturnType<typeof finding>
    )(id, { where: ['runs'] }, params),
  }))
})

/** A list of what was assumed, and cautions in full: they are as long as what they must name. */
const LONG: readonly string[] = ['assumed-uncertainty', 'caution-unanswered']

describe('the catalogue of findings', () => {
  it('holds every entry of its files once', () => {
    const written = readdirSync(folder).flatMap((file) => [
      ...readFileSync(join(folder, file), 'utf8').matchAll(/^ {2}'?([a-z][a-z/-]+)'?: \{$/gm),
    ])
    expect(written.map(([, id]) => id).sort()).toEqual([...ids].sort())
    expect(ids.length).toBeGreaterThan(90)
  })

  it('gives the published rule, which has no case in its name', () => {
    for (const { id, rule } of made)
      expect([id, `${id}/`.startsWith(`${rule}/`), rule.includes('/')]).toEqual([id, true, false])
  })

  it.each(made)('$id: $message $remedy', ({ id, message, remedy = '' }) => {
    for (const text of [message, remedy]) {
      expect(text).toMatch(/^["A-Z0-9]/)
      expect(text).toMatch(/[.]$/)
      expect(text).not.toMatch(/ {2}|undefined|NaN|\[object|Infinity| [.,;]|\.\./)
      expect(text).not.toMatch(fieldPath)
      // A minus sign is U+2212; a unit is apart from its number; thousands and decimals as British engineers write them.
      expect(text).not.toMatch(/(^|[\s(])-\d/)
      expect(text).not.toMatch(/\d(Pa|m|s|m³|m²|cm²|K|%|h)\b|\d%|\d,\d/)
      expect(text).not.toMatch(/\b1 (readings|values|parts|areas|tests|ranges)\b/)
      expect(text).not.toMatch(/\d{4}-\d{2}-\d{2}/)
      for (const phrase of coinedPhrases) expect(text).not.toMatch(phrase)
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

it('rules hold no messages of their own', () => {
  const rules = ['evaluation', 'site', 'uncertainty', 'assessment'].flatMap((layer) =>
    sources(`shared-calc/src/${layer}`),
  )
  expect(rules.length).toBeGreaterThan(60)
  const own = rules.filter((file) => /\bseverity: '/.test(readFileSync(file, 'utf8')))
  expect(own).toEqual([])
})
