import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { commandLine, folder } from './support/command-line'

const LOG = 'test/demo/demo-log.xlsx'
const said = async (...words: string[]) => (await commandLine(...words)).err.join('\n')

it('an answer that would be ignored is refused', async () => {
  // The demo log holds one test, of House 7.
  expect(await said('check', LOG, '--set', 'test=Plot 9')).toContain(
    '--set test: there is no test called "Plot 9" in this log: it has "1" (House 7 (invented))',
  )
  expect((await commandLine('check', LOG, '--set', 'test=House 7 (invented)')).code).toBe(0)
  expect(await said('check', LOG, '--set', 'volume=300', '--set', 'building.volume_m3=400')).toContain(
    'building.volume_m3 is given twice',
  )
})

it('a file without its command, a command of a command, and one word too many say what to type', async () => {
  expect(await said(LOG)).toContain(`to evaluate this file: draughtbook evaluate ${LOG}`)
  expect(await said('token', 'add')).toContain('no NAME was given; `draughtbook token add --help`')
  expect(await said('check', LOG, LOG)).toContain('check takes one FILE only')
  expect(await said('targets', 'all')).toContain('targets takes options only')
})

it('a file in place of a folder is named as such', async () => {
  expect(await said('plan', 'test/demo/demo-plan.json', '--library', LOG)).toBe(
    `${LOG}: it is a file, not a folder`,
  )
  const bare = join(await folder(), 'log')
  await writeFile(bare, 'a,b')
  expect(await said('check', bare)).toContain('a file whose name has no ending is not read')
})
