import { describe, expect, it } from 'vitest'
import { labelOf } from '../../addin/src/pane/fields.js'

const DIRECTIONS = ['depressurisation', 'pressurisation']

describe('the name of a field in a finding', () => {
  it.each([
    ['runs[0].readings[3].flow_m3_h', 'depressurisation, reading 4'],
    ['runs[1].readings', 'pressurisation, readings'],
    ['runs[1].zeroFlowAfter_Pa', 'pressurisation, zero-flow pressure after'],
    ['runs[0].averagingTime_s', 'depressurisation, averaging time'],
    ['runs[0]', 'depressurisation'],
    ['flowDevice.ranges', 'calibrated ranges of the flow device'],
    ['flowDevice.ranges[1].minimumFlow_m3_h', 'device range 2'],
    ['test.openings', 'openings'],
    ['test', 'test details'],
    ['conditions.windSpeed_m_s', 'Wind speed'],
  ])('%s is %s', (path, label) => {
    expect(labelOf(path, DIRECTIONS)).toBe(label)
  })

  it('is never the path where the directions are not known yet', () => {
    expect(labelOf('runs[0].readings[0]')).toBe('run 1, reading 1')
  })
})
