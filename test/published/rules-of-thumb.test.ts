import { evaluate, targetPresets } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { toRecordUnit } from '../../shared-calc/src/log/cells/units.js'
import { oneRun, powerLaw } from '../shared-calc/support/records'

// Common practice, no source: what people of the trade check a result against in their heads.
describe('rules of thumb (common practice, no source)', () => {
  it('50 Pa are about 5 mm of water column', () => {
    expect(toRecordUnit(5, { kind: 'pressure', unit: 'mmH2O' })).toBeCloseTo(49, 0)
  })

  it('65 m³/h read near 80 Pa in a dwelling of about 180 m³ are about 0.3 air changes an hour at 50 Pa', () => {
    const pressures = [80, 70, 60, 50, 40, 30]
    const flows = powerLaw(pressures, 65 / 80 ** 0.65, 0.65).map(({ flow_m3_h }) => flow_m3_h)
    const record = oneRun(pressures, flows)
    record.building.volume_m3 = 180
    expect(evaluate(record).results.n50?.value.toFixed(1)).toBe('0.3')
  })

  it('a limit per volume and a limit per envelope area are kept as different quantities', () => {
    const limit = (id: string) => targetPresets.find((preset) => preset.id === id)?.limits[0]
    expect(limit('passive-house-new')).toMatchObject({ quantity: 'n50', limit: 0.6 })
    expect(limit('england-before-2021')).toMatchObject({ quantity: 'qE50', limit: 10 })
  })
})
