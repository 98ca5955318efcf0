import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { commandLine, folder } from './support/command-line'

const LOG = 'test/demo/demo-log.xlsx'

/** A folder with a log, an archived summary and a list in it; `two` summaries of a building. */
async function archive() {
  const here = await folder()
  const at = (name: string) => join(here, name)
  await writeFile(at('log.xlsx'), await readFile(LOG))
  await writeFile(at('plot-1.xlsx'), await writeSummaryWorkbook(inventedRecord(1)))
  await writeFile(at('plot-2.xlsx'), await writeSummaryWorkbook(inventedRecord(2)))
  await writeFile(at('fees.csv'), 'test number,fee\nA-1,120\n')
  return at
}

/** Every command that writes where it is told, with an input of its own. */
const commands: readonly [name: string, input: (at: (name: string) => string) => string[]][] = [
  ['register', (at) => ['register', at('plot-1.xlsx')]],
  ['building', (at) => ['building', at('plot-1.xlsx'), at('plot-2.xlsx'), '--rule', 'each']],
  ['stages', (at) => ['stages', at('plot-1.xlsx')]],
  ['rerun', (at) => ['rerun', at('plot-1.xlsx')]],
  ['plan', () => ['plan', 'test/demo/demo-plan.json']],
  ['volume', () => ['volume', 'test/demo/demo-house.json']],
  ['evaluate', (at) => ['evaluate', at('plot-1.xlsx')]],
]

it.each(commands)(
  '%s writes over its own earlier workbook, never over a log or a test',
  async (name, input) => {
    const at = await archive()
    const words = input(at)
    for (const other of name === 'evaluate' ? ['log.xlsx'] : ['log.xlsx', 'plot-1.xlsx', 'plot-2.xlsx']) {
      const before = await readFile(at(other))
      const { code, out, err } = await commandLine(...words, '--out', at(other))
      expect([code, out, err.length]).toEqual([2, '', 1])
      expect(err[0]).toMatch(/log\.xlsx|plot-\d\.xlsx/)
      expect(err[0]).toContain('already exists and is not a Draughtbook')
      expect(await readFile(at(other))).toEqual(before)
    }
    for (const time of ['new', 'again'])
      expect([time, (await commandLine(...words, '--out', at('made.xlsx'))).code]).toEqual([time, 0])
    await writeFile(at('empty.xlsx'), '')
    expect((await commandLine(...words, '--out', at('empty.xlsx'))).code).toBe(0)
  },
)

it('a register as CSV replaces an earlier one, but no other list', async () => {
  const at = await archive()
  const words = ['register', at('plot-1.xlsx'), '--out']
  expect((await commandLine(...words, at('fees.csv'))).err.join()).toContain('is not a Draughtbook register')
  for (const _ of [1, 2]) expect((await commandLine(...words, at('month.csv'))).code).toBe(0)
})

it('where nothing can be written is said before the work begins', async () => {
  const at = await archive()
  const { code, err } = await commandLine('register', at(''), '--out', join(at('none'), 'r.xlsx'))
  // Had the folder been read, the log that no layout describes would be named too.
  expect([code, err]).toEqual([
    2,
    [`draughtbook: ${join(at('none'), 'r.xlsx')} cannot be written: there is no folder ${at('none')}`],
  ])
})

it('a layout replaces a layout, but no record', async () => {
  const at = await archive()
  await writeFile(at('record.json'), JSON.stringify(inventedRecord(1)))
  const refused = await commandLine('layout', at('log.xlsx'), '--out', at('record.json'))
  expect(refused.err.join()).toContain('record.json already exists and is not a layout')
  expect(JSON.parse(await readFile(at('record.json'), 'utf8')).format).toContain('record')
  for (const _ of [1, 2])
    expect((await commandLine('layout', at('log.xlsx'), '--out', at('l.json'))).code).toBe(0)
})

it('a plan and a take-off are not read as tests', async () => {
  const at = await archive()
  await commandLine('plan', 'test/demo/demo-plan.json', '--out', at('plan.xlsx'))
  await commandLine('volume', 'test/demo/demo-house.json', '--out', at('volume.xlsx'))
  for (const [name, word] of [
    ['plan.xlsx', 'test plan, not a test: type its readings into a test log'],
    ['volume.xlsx', 'take-off, not a test: give the test log'],
  ] as const) {
    for (const command of ['evaluate', 'check'])
      expect((await commandLine(command, at(name))).err.join()).toMatch(
        new RegExp(`this is a Draughtbook ${word}`),
      )
    const rerun = await commandLine('rerun', at(name), at('plot-1.xlsx'))
    expect([rerun.code, rerun.err.length]).toEqual([0, 1])
    expect(rerun.err[0]).toContain(`${name}: not re-run: it holds no record of a test; a plan or a take-off`)
  }
})
