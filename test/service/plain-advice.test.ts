import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { makeRegister, readLines, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { commandLine, folder } from './support/command-line'
import { demoRecord } from './support/record'

const said = async (...words: string[]) => (await commandLine(...words)).err.join('\n')

async function fileOf(name: string, content: string | Uint8Array): Promise<string> {
  const path = join(await folder(), name)
  await writeFile(path, content)
  return path
}

const summary = async () => fileOf('plot.xlsx', await writeSummaryWorkbook(inventedRecord(1)))

describe('what a user gives by mistake is named, with what to give instead', () => {
  it('a register instead of a test log', async () => {
    const { lines } = readLines(await writeSummaryWorkbook(inventedRecord(1)), 'plot.xlsx')
    const register = await writeRegisterWorkbook(makeRegister(lines, [], { asOf: '2026-10-31' }))
    expect(await said('check', await fileOf('october.xlsx', register))).toContain(
      'this is a Draughtbook register, not a test: give the test log',
    )
  })

  it('a log as the place to save a layout, which would be lost, and only a register where tests are combined', async () => {
    const log = await fileOf('log.xlsx', await readFile('test/demo/demo-log.xlsx'))
    expect(await said('layout', log, '--out', log)).toContain(`--out must name a .json file, not ${log}`)
    expect(await readFile(log)).toEqual(await readFile('test/demo/demo-log.xlsx'))
    const { lines } = readLines(await writeSummaryWorkbook(inventedRecord(1)), 'plot.xlsx')
    const register = await writeRegisterWorkbook(makeRegister(lines, [], { asOf: '2026-10-31' }))
    expect(await said('building', await fileOf('october.xlsx', register), '--json')).toMatch(
      /no test was found\n.*october\.xlsx: this is a Draughtbook register/,
    )
  })

  it('a share instead of a percentage, and a percentage with its sign', async () => {
    const file = await summary()
    expect(await said('stages', file, '--confidence', '0.8', '--json')).toContain('for 80 % give 80')
    expect(await said('stages', file, '--allow', '0.7,0.9', '--json')).toContain('for 70 % give 70')
    expect(await said('stages', file, '--allow', '70%,90%', '--json')).not.toContain('--allow')
  })

  it('an empty record, an empty list of orders, a photo instead of the folder of photos', async () => {
    expect(await said('check', await fileOf('empty.json', ' \n'))).toMatch(/empty\.json: it is empty$/)
    const orders = await fileOf('orders.csv', '')
    expect(await said('register', await summary(), '--orders', orders, '--json')).toContain(
      `${orders}: the file is empty`,
    )
    const record = await fileOf('plot.json', JSON.stringify(demoRecord()))
    const photo = await fileOf('leak.png', await readFile('test/demo/pictures/leakage-curve.png'))
    expect(await said('evaluate', record, '--photos', photo)).toContain(
      `${photo} is a file: give the folder that the photos are in`,
    )
  })

  it('a field mistyped, and a date as people write it', async () => {
    const record = demoRecord()
    const { volume_m3, ...building } = record.building
    const mistyped = { ...record, building: { ...building, volum_m3: volume_m3 } }
    expect(await said('check', await fileOf('plot.json', JSON.stringify(mistyped)))).toContain(
      'building.volum_m3: unknown field; did you mean volume_m3?',
    )
    const dated = { ...record, test: { ...record.test, date: '14.10.2026' } }
    expect(await said('check', await fileOf('plot.json', JSON.stringify(dated)))).toContain(
      'test date must be a date of the form 2026-10-14, not the text "14.10.2026"',
    )
  })
})
