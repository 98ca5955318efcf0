import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { makeRegister } from '@draughtbook/shared-calc/register'
import ExcelJS from 'exceljs'
import { expect, it } from 'vitest'
import { checkOutput } from '../../service/src/cli/checked-output'
import { nameForFile, writeRegisters } from '../../service/src/cli/write-registers'
import { folder } from '../service/support/command-line'
import { inventedHouses } from './invented-lines'

const about = { asOf: '2026-10-31' }

it('writes one register for each client, with links that lead from there to its own tests', async () => {
  const root = await folder()
  const lines = inventedHouses(3)
    .flatMap((house) => house.lines)
    .map((line) => ({ ...line, file: join(root, line.file) }))
  const out = join(root, 'month.xlsx')
  await writeRegisters(out, makeRegister(lines, [], about), lines, about, 'client')
  expect((await readdir(root)).sort()).toEqual([
    'month-Example-Homes-invented.xlsx',
    'month-Sample-Builder-invented.xlsx',
    'month-Third-Client-invented.xlsx',
    'month.xlsx',
  ])
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.readFile(join(root, 'month-Third-Client-invented.xlsx'))
  const links: string[] = []
  workbook.getWorksheet('Register')?.eachRow((row) => {
    row.eachCell(({ hyperlink }) => {
      if (hyperlink) links.push(hyperlink)
    })
  })
  expect(links).toEqual(['./archive/2/a.xlsx', './archive/2/b.xlsx'])
})

it('writes CSV with one line for each test, and no text that a spreadsheet takes as a formula', async () => {
  const root = await folder()
  const [first] = inventedHouses(1).flatMap((house) => house.lines)
  if (!first) throw new Error('no test')
  const lines = [{ ...first, building: '=1+1', site: 'A, "B"' }]
  const out = join(root, 'month.csv')
  await writeRegisters(out, makeRegister(lines, [], about), lines, about, undefined)
  const [head, row, ...more] = (await readFile(out, 'utf8')).split('\r\n')
  expect(head).toMatch(/^\uFEFFNo\.,Site,Plot,Stage,Date,/)
  expect(row).toMatch(/^1,"A, ""B""",'=1\+1,acceptance,2026-10-05,/)
  expect(more).toEqual([''])
  await expect(checkOutput('month.pdf', 'register', ['.xlsx', '.csv'])).rejects.toThrow(
    '--out must name an .xlsx or a .csv file',
  )
})

it('makes names that are safe for files, each once', () => {
  const used = new Set<string>()
  expect(['../A: b?', 'a-B', '***', 'Ünal'].map((text) => nameForFile(text, used))).toEqual([
    'A-b',
    'a-B-2',
    'client',
    'Ünal',
  ])
})
