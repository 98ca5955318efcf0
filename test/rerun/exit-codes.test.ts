import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makeRegister, readLines, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { commandLine } from '../service/support/command-line'

let root: string
const at = (name: string) => join(root, name)

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'exit-'))
  const bytes = await writeSummaryWorkbook(inventedRecord(3))
  await writeFile(at('test.xlsx'), bytes)
  await writeFile(at('cut.xlsx'), bytes.slice(0, 5000))
  const register = makeRegister(readLines(bytes, at('test.xlsx')).lines, [], { asOf: '2026-11-26' })
  await writeFile(at('register.xlsx'), await writeRegisterWorkbook(register))
})
afterAll(() => rm(root, { recursive: true }))

it.each([
  ['a sound summary', ['test.xlsx'], 0],
  ['a sound summary with its register', ['test.xlsx', 'register.xlsx'], 0],
  ['some of the files cannot be read', ['test.xlsx', 'cut.xlsx'], 1],
  ['no file can be read', ['cut.xlsx'], 2],
  ['nothing can be compared', ['register.xlsx'], 2],
] as const)('a re-run ends with the exit code of the contract: %s', async (_, files, code) => {
  const done = await commandLine('rerun', ...files.map(at))
  expect(done.code).toBe(code)
})

it('a register that agrees is named with what was compared', async () => {
  const { out } = await commandLine('rerun', at('test.xlsx'), at('register.xlsx'))
  expect(out).toMatch(
    /register\.xlsx: made again from its 1 test, every figure and everything visible agrees/,
  )
  expect(out).toMatch(/^1 test re-run, 1 report on them compared: /m)
})
