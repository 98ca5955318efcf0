import { describe, expect, it } from 'vitest'
import { askAbout } from '../../addin/src/calc/ask-about.js'

/** What each is as the field's own unit has it: conversions by hand. */
const ASKED: readonly (readonly [
  path: string,
  text: string,
  value: number,
  says: RegExp,
  meant: readonly string[],
  canKeep: boolean,
])[] = [
  // No building has less than no volume, and no air is at 200 °C: nothing to keep.
  ['building.volume_m3', '-400', -400, /^−400 m³ is not possible/, [], false],
  ['building.volume_m3', '0', 0, /^0 m³ is not possible/, [], false],
  ['conditions.indoorTemperature_C', '200', 200, /^200 °C is not possible/, [], false],
  // 68 °F are 20 °C.
  ['conditions.indoorTemperature_C', '68', 68, /^68 °C is not possible/, ['68 °F'], false],
  // Air at 1009 Pa is that of 30 km above the ground; 1009 hPa is an ordinary day.
  [
    'conditions.barometricPressure_Pa',
    '1009',
    1009,
    /^1009 Pa is not possible: barometric pressure is 60\s000 to 108\s500 Pa/,
    ['1009 hPa', '1009 mbar'],
    false,
  ],
  // Small, but a summer house may have it.
  ['building.volume_m3', '25', 25, /^25 m³ is unusual: internal volume is 30 to 500\s000 m³/, [], true],
  // A share is asked for: 45 is a percentage, and so is a share with the sign behind it.
  ['conditions.indoorRelativeHumidity', '45', 45, /^45 is not possible/, ['45 %'], false],
  ['conditions.indoorRelativeHumidity', '100', 100, /^100 is not possible/, ['100 %'], false],
  ['conditions.outdoorRelativeHumidity', '0,8 %', 0.008, /^0.8 % is unusual/, ['80 %'], true],
  ['conditions.outdoorRelativeHumidity', '0.008', 0.008, /^0.8 % is unusual/, ['80 %'], true],
  ['conditions.indoorRelativeHumidity', '-0.4', -0.4, /^−0.4 is not possible/, [], false],
  ['conditions.indoorRelativeHumidity', '450', 450, /^450 is not possible/, [], false],
]

describe('an odd value typed into a field', () => {
  it.each(ASKED)('%s %s is asked about', (path, text, value, says, meant, canKeep) => {
    const asked = askAbout(path, text, value)
    expect(asked?.words).toMatch(says)
    expect(asked?.meant.map((one) => [one.text, one.unit].filter(Boolean).join(' '))).toEqual(meant)
    expect(asked?.canKeep).toBe(canKeep)
  })

  it.each([
    ['conditions.indoorRelativeHumidity', '0.45', 0.45],
    ['conditions.indoorRelativeHumidity', '45 %', 0.45],
    ['conditions.outdoorRelativeHumidity', '1', 1],
    ['building.volume_m3', '400', 400],
    ['conditions.outdoorTemperature_C', '-12', -12],
    ['test.tester', '5', 5],
  ])('%s %s is not', (path, text, value) => {
    expect(askAbout(path, text, value)).toBeUndefined()
  })
})
