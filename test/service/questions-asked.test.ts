import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { run } from '../../service/src/cli/run'
import { folder } from './support/command-line'

/** A log that says neither temperatures nor the units of volume and flow. */
const LOG = `Test date,22 April 2026
Volume,350
Pressure,Flow
-60,310
-50,270
-40,235
-30,190
-20,140
`

/** Runs `evaluate` on a terminal where a person gives these answers in turn; gives up where there are none left. */
async function evaluated(...answers: string[]) {
  const log = join(await folder(), 'log.csv')
  await writeFile(log, LOG)
  const [out, err, asked]: [string[], string[], string[]] = [[], [], []]
  const code = await run(['evaluate', log, '--json'], {
    out: (text) => void out.push(text),
    err: (line) => void err.push(line),
    watched: true,
    ask: async ({ path }) => {
      asked.push(path)
      return answers[asked.length - 1]
    },
  })
  return { code, out: out.join('\n'), err, asked }
}

describe('what a log leaves open, asked on a terminal', () => {
  it('is asked one after the other, and calculated once nothing is open', async () => {
    const { code, out, err, asked } = await evaluated('20 °C', '8 °C', 'm3/h', 'm3')
    expect(asked).toEqual([
      'conditions.indoorTemperature_C',
      'conditions.outdoorTemperature_C',
      'flow.unit',
      'volume.unit',
    ])
    expect(code).toBe(0)
    expect(err[0]).toBe(
      'log.csv: 4 questions are open. Ctrl-C stops and shows how to answer on the command line.',
    )
    expect(JSON.parse(out)).toMatchObject({ verdict: expect.anything() })
  })

  it('is asked again at once where the answer cannot be used', async () => {
    const { asked, err } = await evaluated('warm', '20 °C', '8 °C', 'm3/h', 'm3')
    expect(asked.slice(0, 3)).toEqual([
      'conditions.indoorTemperature_C',
      'conditions.indoorTemperature_C',
      'conditions.outdoorTemperature_C',
    ])
    expect(err).toContain('"warm" cannot be used here.')
  })

  it('ends, when the person stops, with the command that answers the rest', async () => {
    const { code, err } = await evaluated('20 °C')
    expect(code).toBe(2)
    const command = err.at(-1) ?? ''
    expect(command).toMatch(/^Then: draughtbook evaluate /)
    expect(command).toContain('--set conditions.indoorTemperature_C="20 °C"')
    expect(command.match(/--set [\w.]+=/g)).toHaveLength(4)
  })
})
