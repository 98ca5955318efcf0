import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { assessBuilding } from '@draughtbook/shared-calc'
import { makeRegister, readLines } from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { expect, it } from 'vitest'
import { registerLines } from '../../service/src/cli/print/register-lines'
import { missingPaths } from '../../service/src/settings/missing-paths'
import { defaultSettings } from '../../service/src/settings/settings'
import { inventedRecord } from '../archive/invented-record'

it('a register says what its totals include, what they do not, and everything left out', async () => {
  const record = inventedRecord(7, { stage: 'acceptance', n50: 0.4, date: '2026-10-05' })
  const bytes = await writeSummaryWorkbook(record)
  const lines = ['a.xlsx', 'b.xlsx'].flatMap((file) => readLines(bytes, file).lines)
  const unread = [
    { file: 'cut.xlsx', why: 'the file is cut short or damaged' },
    { file: 'photo.jpg', why: 'not a workbook or a CSV file', expected: true, kind: 'other format' },
    { file: 'n.txt', why: 'not a workbook or a CSV file', expected: true, kind: 'other format' },
  ] as const
  const other = readLines(
    await writeSummaryWorkbook(inventedRecord(8, { date: '2026-09-05', n50: 0.4 })),
    'september.xlsx',
  ).lines
  const register = makeRegister([...lines, ...other], unread, { month: '2026-10', asOf: '2026-11-01' })
  expect(registerLines(register, true)).toEqual([
    '2 rows, 1 test included in totals: 1 met the target, 0 failed, 0 not valid',
    '1 row not included: 1 duplicate',
    '1 test to bill; no plots to retest',
    'Left out:',
    '  1 file that could not be read: cut.xlsx',
    '  1 test of another month: september.xlsx',
    '  2 files that are not workbooks or CSV files: n.txt, photo.jpg',
  ])
})

it('a building says which homes it was given more than one test of', () => {
  const home = (file: string, name: string, seed: number) => {
    const record = inventedRecord(seed)
    record.building.name = name
    record.building.site = 'Invented Green'
    return { file, record }
  }
  const { findings } = assessBuilding({
    name: 'Building (invented)',
    homes: [home('1.xlsx', 'Flat 1', 1), home('2.xlsx', 'Flat 2', 2), home('3.xlsx', 'flat 1', 3)],
  })
  const twice = findings.filter(({ rule }) => rule === 'homes-twice')
  expect(twice).toMatchObject([{ severity: 'caution', files: ['1.xlsx', '3.xlsx'] }])
  expect(twice[0]?.message).toMatch(/^There is more than one test of Flat 1\. /)
})

it('the service says which paths of its settings do not exist', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'paths-'))
  const [library, tokens] = [join(folder, 'library'), join(folder, 'tokens.json')]
  const said = await missingPaths({ ...defaultSettings, library, tokens })
  expect(said).toHaveLength(2)
  expect(said[0]).toContain(library)
  expect(said[1]).toContain(tokens)
  expect(await missingPaths({ ...defaultSettings, library: folder })).toEqual([])
  await rm(folder, { recursive: true })
})
