import {
  allCautions,
  checkPreparation,
  evaluate,
  parseRecord,
  preparationList,
} from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { exampleRecord } from './support/example-record.js'

type Openings = { opening: string; kind?: string; state: string }[]

const record = (openings: Openings, more: object = {}, test: object = {}) =>
  parseRecord({
    ...exampleRecord,
    format: 'draughtbook/record@2',
    test: { ...exampleRecord.test, openings, ...test },
    ...more,
  })
const findings = (...args: Parameters<typeof record>) => evaluate(record(...args)).findings
const everything = (method: 'method 1' | 'method 2'): Openings =>
  preparationList.map(({ kind, asks }) => ({
    opening: `the ${kind}`,
    kind,
    state: asks[method].states[0] as string,
  }))
const answered = {
  preparation: {
    cautions: allCautions.map((caution) => ({ caution, answer: 'taken care of', by: 'A. Tester' })),
  },
}

describe('preparation of a record@2', () => {
  it.each(['method 1', 'method 2'] as const)(
    '%s with every opening as asked and every caution answered: no finding',
    (preparation) => {
      const rules = findings(everything(preparation), answered, { preparation }).map(({ rule }) => rule)
      expect(
        rules.filter((rule) => rule.startsWith('preparation') || rule.startsWith('caution')),
      ).toStrictEqual([])
    },
  )

  it.each([
    ['method 1', 'natural ventilation openings', 'sealed', 'closed'],
    ['method 2', 'natural ventilation openings', 'closed', 'sealed'],
    ['method 1', 'whole-building ventilation', 'closed', 'sealed'],
    ['method 1', 'internal doors', 'closed', 'open'],
    ['method 2', 'external windows', 'open', 'closed'],
  ])(
    '%s: %s left %s departs, as ISO 9972:2015 table 1 asks for %s (value from memory)',
    (preparation, kind, state, asked) => {
      const found = findings([{ opening: 'this one', kind, state }], answered, { preparation }).filter(
        ({ rule }) => rule === 'preparation-departs',
      )
      expect(found).toHaveLength(1)
      expect(found[0]?.where).toStrictEqual(['test.openings[0].state'])
      expect(found[0]?.message).toContain(`requires: ${asked}`)
    },
  )

  it('"not present" agrees with every method', () => {
    const absent = preparationList.map(({ kind }) => ({ opening: kind, kind, state: 'not present' }))
    expect(findings(absent, answered).map(({ rule }) => rule)).not.toContain('preparation-departs')
  })

  it('an opening left blank is named', () => {
    const [, ...others] = everything('method 1')
    const blank = findings(others, answered).find(({ rule }) => rule === 'preparation-blank')
    expect(blank?.message).toBe('No state was logged for: external windows.')
  })

  it('knows an opening by its kind, or by the very words of the list, and by nothing else', () => {
    const found = (opening: string) =>
      checkPreparation(record([{ opening, state: 'closed' }])).filter((line) => line.found.length > 0)
    expect(found('Loft hatch').map(({ kind }) => kind)).toStrictEqual(['loft hatch'])
    expect(found('hatch to the loft')).toStrictEqual([])
  })

  it('method 3 needs its purpose', () => {
    expect(findings([], answered, { preparation: 'method 3' }).map(({ rule }) => rule)).toContain(
      'preparation-purpose',
    )
    expect(
      findings([], answered, { preparation: 'method 3', purpose: 'code X' }).map(({ rule }) => rule),
    ).not.toContain('preparation-purpose')
  })
})

describe('cautions', () => {
  it('each that nobody has acknowledged is named, with what to look for and who decides', () => {
    const found = findings([], { preparation: { cautions: answered.preparation.cautions.slice(1) } }).find(
      ({ rule }) => rule === 'caution-unanswered',
    )
    expect(found?.message).toBe('The tester has not acknowledged the caution "fuel-burning appliances".')
    expect(found?.remedy).toMatch(/carbon monoxide.*Local codes and licensed practice decide\.$/)
  })

  it('a record without any answer names all seven', () => {
    const found = findings([]).find(({ rule }) => rule === 'caution-unanswered')
    expect(found?.message.split(/, | and (?!membranes|fireplaces|cables)/)).toHaveLength(7)
  })

  it('a stove in the list contradicts "does not apply"', () => {
    const cautions = answered.preparation.cautions.map((one) =>
      one.caution === 'fuel-burning appliances' ? { ...one, answer: 'does not apply' } : one,
    )
    const rules = (state: string) =>
      findings([{ opening: 'stove', kind: 'flues and fireplaces', state }], {
        preparation: { cautions },
      }).map(({ rule }) => rule)
    expect(rules('closed')).toContain('caution-contradicted')
    expect(rules('not present')).not.toContain('caution-contradicted')
  })
})

describe('a record@1', () => {
  it('is judged as when it was archived: none of the rules of record@2 speaks', () => {
    const rules = evaluate(parseRecord(exampleRecord)).findings.map(({ rule }) => rule)
    expect(rules.filter((rule) => /^(preparation-|caution-|leak|take-off)/.test(rule))).toStrictEqual([])
  })
})
