import {
  assessBuilding,
  evaluate,
  stagesResult,
  type TestRecord,
  targetPresets,
  workStages,
} from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { verdictLines } from '../../../service/src/cli/print/verdict-text.js'
import { lineOf } from '../../../shared-calc/src/reports/register/test-line.js'
import { type HouseOfLimits, housesOfLimits, severalLimits } from '../support/several-limits.js'

const presets = Object.keys(severalLimits)
const housesOf = (preset: string): HouseOfLimits[] =>
  housesOfLimits.filter(({ record }) => (record.target as { preset: string }).preset === preset)

/** As a person reads the unit. */
const PRINTED: Readonly<Record<string, string>> = {
  '1/h': '1/h',
  'm3/(h·m2)': 'm³/(h·m²)',
  'cm2/m2': 'cm²/m²',
}
/** What a figure is related to, for the flow that just meets its limit. */
const basisOf = ({ building }: TestRecord, quantity: string): number =>
  (quantity === 'n50' ? building.volume_m3 : building.envelopeArea_m2) ?? Number.NaN

describe('a target with more than one limit', () => {
  it('is in the table of this test', () => {
    const several = targetPresets.filter(({ limits }) => limits.length > 1).map(({ id }) => id)
    expect([...presets].sort()).toEqual([...several].sort())
    for (const preset of presets) {
      // Each limit decides somewhere, with the target met and missed.
      const seen = housesOf(preset).map(({ decisive, meets }) => `${decisive.quantity} ${meets}`)
      const { limits } = severalLimits[preset] ?? { limits: [] }
      for (const { quantity } of limits)
        expect(seen, preset).toEqual(expect.arrayContaining([`${quantity} true`, `${quantity} false`]))
    }
  })

  it.each(presets)('%s is judged by the limit that decides, in that limit’s unit', (preset) => {
    for (const { name, record, decisive, value, meets } of housesOf(preset)) {
      const { verdict } = evaluate(record)
      expect(verdict.outcome, name).toBe(meets ? 'meets' : 'misses')
      expect(verdict.target, name).toMatchObject({ quantity: decisive.quantity, unit: decisive.unit })
      expect(verdict.target?.limit, name).toBeCloseTo(decisive.limit, 9)
      expect(verdict.value, name).toBeCloseTo(value, 6)
      expect(verdict.margin, name).toBeCloseTo(decisive.limit - value, 6)
      // Published growth of leakage in the first year: 18 and 25 %.
      expect(
        verdict.ageing.map((year) => year.value / value),
        name,
      ).toEqual([expect.closeTo(1.18, 6), expect.closeTo(1.25, 6)])
      expect((verdict.leakageToSeal_cm2 ?? 0) > 0, name).toBe(!meets)
    }
  })

  it.each(presets)('%s has it in the command’s output and in the register', (preset) => {
    for (const { name, record, decisive, value, meets } of housesOf(preset)) {
      const evaluation = evaluate(record)
      const unit = PRINTED[decisive.unit] ?? ''
      const lines = verdictLines(evaluation)
      const margins = lines.filter(({ label }) => label === 'Margin').map(({ text }) => text)
      const own = margins.find((text) => text.startsWith(`${decisive.quantity} `))
      expect(own, name).toContain(` ${unit} ${meets ? 'below' : 'above'} the limit of `)
      for (const { text } of lines.filter(({ label }) => label === 'Ageing'))
        expect(text, name).toContain(` ${unit}, `)
      const { judged } = lineOf({ file: 'x', source: 'summary workbook' }, record, evaluation)
      expect(judged, name).toMatchObject({ quantity: decisive.quantity, unit: decisive.unit })
      expect(judged?.value, name).toBeCloseTo(value, 6)
      expect(judged?.limit, name).toBeCloseTo(decisive.limit, 9)
    }
  })

  it.each(presets)('%s has it in a building and in the stages of a site', (preset) => {
    for (const { name, record, decisive, value, meets } of housesOf(preset)) {
      const plot = (building: string): TestRecord => ({
        ...record,
        building: { ...record.building, name: building },
        test: { ...record.test, stage: 'acceptance' },
      })
      const given = ['Plot 1', 'Plot 2'].map((one) => ({ file: one, record: plot(one) }))
      const stages = stagesResult(workStages({ tests: given }))
      // A limit of an area cannot be shared among homes or stages, and both say so.
      if (decisive.quantity === 'aE10') {
        expect(() => assessBuilding({ name: 'x', homes: given }), name).toThrow(/limit of aE10 cannot be/)
        expect(stages.leftOut[0]?.why, name).toMatch(/limit of aE10 cannot be/)
        continue
      }
      const building = assessBuilding({ name: 'x', homes: given })
      expect(building.target, name).toMatchObject({ quantity: decisive.quantity, unit: decisive.unit })
      expect(building.target.limit, name).toBeCloseTo(decisive.limit, 9)
      expect(building.homes[0]?.value, name).toBeCloseTo(value, 6)
      expect(building.outcome, name).toBe(meets ? 'meets' : 'misses')
      const [stage] = stages.stages
      expect(stage?.target_m3_h, name).toBeCloseTo(decisive.limit * basisOf(record, decisive.quantity), 6)
      expect(stage?.decision, name).toBe(meets ? 'meets' : 'fails')
    }
  })

  it('holds all homes of a building against one of two limits, the one that a home comes nearest to', () => {
    const at = (shares: string): HouseOfLimits =>
      housesOf('passive-house-new').find(({ name }) => name.includes(shares)) as HouseOfLimits
    const byRate = at('n50 0.9 and flow per envelope 0.7 ')
    const byEnvelope = at('n50 0.7 and flow per envelope 0.9 ')
    // The second home is at 0.9 of its limit, over a part of its envelope: 0.86 or 0.95 of it.
    const together = (part: number) => {
      const { record } = byEnvelope
      const envelopeArea_m2 = (record.building.envelopeArea_m2 ?? 0) * part
      return assessBuilding({
        name: 'x',
        homes: [
          { file: 'home 1', record: byRate.record },
          { file: 'home 2', record: { ...record, building: { ...record.building, envelopeArea_m2 } } },
        ],
      })
    }
    expect(together(0.9 / 0.86).target).toMatchObject({ quantity: 'n50', unit: '1/h' })
    expect(together(0.9 / 0.95).target).toMatchObject({ quantity: 'qE50', unit: 'm3/(h·m2)' })
    expect(together(0.9 / 0.95).homes[1]?.value).toBeCloseTo(0.95 * 0.6, 6)
  })
})
