import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { evaluate, placeWords, problemsInWords, problemWords } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line'
import { demoRecord } from '../service/support/record'
import { fieldPath } from './findings/coined-phrases'

// Words as a tester would say them, typed by hand.
const places = [
  ['runs', 'both directions'],
  ['runs[0].readings[1].pressure_Pa', 'depressurisation, reading 2, pressure difference'],
  ['runs[1].readings[4]', 'pressurisation, reading 5'],
  ['runs[1].readings', 'pressurisation, readings'],
  ['runs[0].readings[1].devices[0].flow_m3_h', 'depressurisation, reading 2, device 1, air flow'],
  ['runs[0].zeroFlowBefore_Pa', 'depressurisation, zero-flow pressure before'],
  ['runs[0].zeroFlowBefore_Pa[3]', 'depressurisation, zero-flow pressure before, value 4'],
  ['conditions.windSpeed_m_s', 'wind speed'],
  ['conditions.beaufort', 'wind force (Beaufort)'],
  ['flowDevice.ranges', 'calibrated ranges of the flow device'],
  ['flowDevice.ranges[0].exponent', 'flow device, range 1, exponent of the range'],
  ['pressureGauge.calibrationDue', 'calibration due date of the pressure gauge'],
  ['test.openings[2].state', 'opening 3, state'],
  ['takeOff.spaces[0].parts[1].height_m', 'space 1, part 2, height'],
  ['plan.forecast.windSpeed_m_s', 'forecast wind speed'],
] as const

describe('places in words', () => {
  it.each(places)('%s is “%s”', (path, words) => {
    expect(placeWords(path, demoRecord())).toBe(words)
  })

  it('says which direction a test of one direction has', () => {
    expect(placeWords('runs', { runs: [{ direction: 'pressurisation' }] })).toBe('pressurisation')
  })

  it('leaves no path in the words of any finding of a record without its equipment', () => {
    const { pressureGauge: _, flowDevice: __, ...bare } = demoRecord()
    for (const { where } of evaluate({ ...bare, conditions: bare.conditions }).findings)
      for (const path of where) expect(placeWords(path, bare)).not.toMatch(fieldPath)
  })
})

describe('problems in words', () => {
  it.each([
    [{ path: 'building.name', message: 'building name is missing' }, 'building name is missing'],
    [
      { path: 'runs[0].readings[1].flow_m3_h', message: 'air flow must be a number in m³/h' },
      'depressurisation, reading 2: air flow must be a number in m³/h',
    ],
    [
      { path: 'runs[1].readings', message: 'the run has no readings; enter them' },
      'pressurisation: the run has no readings; enter them',
    ],
    [{ path: 'runs[1].readings', cell: 'Test!G37', message: 'it is empty' }, 'Test!G37: it is empty'],
    [{ path: '', message: 'not a workbook' }, 'not a workbook'],
  ])('%o', (problem, words) => {
    expect(problemWords(problem, demoRecord())).toBe(words)
  })

  it('are said once each', () => {
    const same = { path: '', message: 'it is not valid JSON' }
    expect(problemWords({ path: '2026/flat 1.xlsx', message: 'it has no target' })).toBe(
      '2026/flat 1.xlsx: it has no target',
    )
    expect(problemsInWords([same, same, { path: 'building.volume_m3', message: 'it is 0' }])).toBe(
      'it is not valid JSON; internal volume: it is 0',
    )
  })
})

it('the command adds the path only where a value is missing and can be given with --set', async () => {
  const file = join(await folder(), 'windy.json')
  const record = demoRecord()
  record.conditions.windSpeed_m_s = 9
  await writeFile(file, JSON.stringify(record))
  const { out } = await commandLine('check', file)
  expect(out).toMatch(/where: wind speed\n/)
  expect(out).toContain('(pressureGauge.calibrationDue)')
})
