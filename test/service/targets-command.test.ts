import { targetPresets } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { commandLine } from './support/command-line'

const DEMO = 'test/demo/demo-log.xlsx'

describe('draughtbook targets', () => {
  it('lists every target that --target takes, one a line, with its name', async () => {
    const { code, out, err } = await commandLine('targets')
    expect([code, err]).toEqual([0, []])
    const lines = out.split('\n')
    for (const { id, label } of targetPresets)
      expect(lines.filter((line) => line.startsWith(`${id} `) && line.includes(label))).toHaveLength(1)
    expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(100)
    expect(JSON.parse((await commandLine('targets', '--json')).out)).toHaveLength(targetPresets.length)
  })

  it('is what an unknown --target leads to; the message names the nearest ones only', async () => {
    const { code, err } = await commandLine('check', DEMO, '--target', 'passvie-house')
    expect(code).toBe(2)
    expect(err.join()).toMatch(
      /--target: there is no target "passvie-house".*Known targets: passive-house-new, passive-house-retrofit, .* and \d+ others\. List them all with: draughtbook targets$/,
    )
  })
})
