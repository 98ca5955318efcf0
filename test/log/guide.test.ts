import { readFile } from 'node:fs/promises'
import { evaluate } from '@draughtbook/shared-calc'
import { parseLayout, readLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { generatedLogs } from './generated/recipes'

describe('the guide to test logs', () => {
  it('shows a layout that reads a log of that shape', async () => {
    const guide = await readFile(new URL('../../shared-calc/TEST-LOGS.md', import.meta.url), 'utf8')
    const [layout = '', results = ''] = [...guide.matchAll(/```json\n([\s\S]*?)```/g)].map(([, json]) => json)
    const log = generatedLogs.find(({ name }) => name === 'english form, side by side')
    if (!log) throw new Error('the log is missing')
    const whole = { ...JSON.parse(layout), ...JSON.parse(`{${results}}`) }
    const { tests } = readLog(await log.write(), log.fileName, { layout: parseLayout(whole) })
    const record = tests[0]?.record
    if (!record) throw new Error(JSON.stringify(tests[0]?.problems))
    const truth = log.tests[0]?.runs[0]
    const [run] = evaluate(record).runs
    expect(run?.readings.length).toBe(truth?.readings)
    expect(run?.airFlowExponent.value).toBeCloseTo(truth?.exponent ?? Number.NaN, 9)
  })

  it('names only options and commands that there are', async () => {
    const guide = await readFile(new URL('../../shared-calc/TEST-LOGS.md', import.meta.url), 'utf8')
    const { commands } = await import('../../service/src/cli/commands')
    for (const [, name] of guide.matchAll(/npx draughtbook (\w+)/g))
      expect(commands.map((command) => command.name)).toContain(name)
  })
})
