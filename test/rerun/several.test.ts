import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { TestRecord } from '@draughtbook/shared-calc'
import { writeBuildingWorkbook } from '@draughtbook/shared-calc/building'
import { namedByPart, readRecords } from '@draughtbook/shared-calc/register'
import { makeRerunReport, type RerunTest, rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeStagesWorkbook } from '@draughtbook/shared-calc/stages'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkResult } from '../../service/src/queue/check-result'
import { inventedRecord } from '../archive/invented-record'
import { commandLine } from '../service/support/command-line'
import { recalculate } from '../support/libreoffice'
import { runTool } from '../support/run-tool'
import { PackageText } from './support/package'

function flat(seed: number, plot: string, n50: number, stage: string, date: string): TestRecord {
  const record = inventedRecord(seed, { n50, plot, site: 'Invented Court', date, volume: 300 })
  return {
    ...record,
    test: { ...record.test, stage },
    target: { quantity: 'n50', limit: 0.6, referencePressure_Pa: 50, directions: 'mean' },
  } as TestRecord
}

const records = [
  flat(1, 'Flat 1', 0.3, 'fabric', '2026-03-02'),
  flat(2, 'Flat 2', 0.5, 'acceptance', '2026-07-02'),
  flat(3, 'Flat 3', 0.65, 'after services', '2026-05-02'),
  flat(4, 'Flat 1', 0.45, 'after services', '2026-05-03'),
  // Tested again later, so the stages leave it out.
  flat(5, 'Flat 1', 0.35, 'fabric', '2026-02-02'),
]

interface Given {
  readonly file: string
  readonly bytes: Uint8Array
  readonly rerun: RerunTest[]
}
let tests: Given[]
const reports: Record<'building' | 'stages', Uint8Array> = {
  building: new Uint8Array(),
  stages: new Uint8Array(),
}
type Report = keyof typeof reports

beforeAll(async () => {
  tests = await Promise.all(
    records.map(async (record, i) => {
      const file = `court/t${i + 1}.xlsx`
      const bytes = await writeSummaryWorkbook(record)
      return { file, bytes, rerun: await rerunFile(bytes, file) }
    }),
  )
  const read = tests.flatMap(({ file, bytes }) => readRecords(bytes, file).records.map(namedByPart))
  reports.building = await writeBuildingWorkbook({
    name: 'Invented Court',
    homes: read.slice(0, 3),
    rule: 'summed',
    homesInBuilding: 20,
    sampleSize: 4,
    morePerMiss: 2,
  })
  reports.stages = await writeStagesWorkbook({ tests: read, confidence: 0.7 })
})

async function rerun(bytes: Uint8Array, given: readonly Given[] = tests) {
  const report = await makeRerunReport(
    [...given.flatMap((one) => one.rerun), ...(await rerunFile(bytes, 'report.xlsx'))],
    '2026-11-26',
  )
  return { report, entry: report.tests.find(({ file }) => file === 'report.xlsx') }
}

/** The workbook with one cell of a sheet written otherwise. */
function changed(kind: Report, sheet: string, address: string, change: (cell: string) => string): Uint8Array {
  const book = new PackageText(reports[kind])
  const cell = new RegExp(`<c r="${address}"(?: [^>]*)?(?:/>|(?<!/)>.*?</c>)`, 's')
  return book.edit(book.sheet(sheet), cell, (found) => change(found)).bytes
}
const number = (cell: string) => cell.replace(/<v>[^<]*<\/v>/, '<v>0.31</v>')
const text = (cell: string) =>
  cell.replace(/ t="\w+"/, '').replace(/>.*$/s, ' t="inlineStr"><is><t>MEETS</t></is></c>')

describe('a building and the stages of a site, re-run with their tests', () => {
  it.each(['building', 'stages'] as const)('%s: agrees as written, by whatever way it came', async (kind) => {
    const { entry, report } = await rerun(reports[kind])
    expect(entry?.differences).toEqual([])
    expect(entry?.outcome).toBe('agrees')
    expect(entry?.why).toMatch(/^made again from its \d tests, every figure and everything visible agrees$/)
    expect(entry).not.toHaveProperty('bytes')
    expect(report.tests.every((test) => !('given' in test))).toBe(true)
    const queued: unknown = JSON.parse(JSON.stringify(await rerunFile(reports[kind], 'report.xlsx')))
    expect(checkResult('rerun', { job: 'a', file: 'report.xlsx' }, { job: 'a', result: queued })).toEqual(
      queued,
    )
  })

  it.each(['building', 'stages'] as const)(
    '%s: agrees after LibreOffice and Gnumeric have saved it',
    async (kind) => {
      const folder = await mkdtemp(join(tmpdir(), 'several-'))
      const [given, saved] = [join(folder, 'given.xlsx'), join(folder, 'saved.xlsx')]
      await writeFile(given, reports[kind])
      await runTool('ssconvert', [given, saved], 'gnumeric')
      for (const bytes of [await recalculate(reports[kind]), new Uint8Array(await readFile(saved))]) {
        const { entry } = await rerun(bytes)
        expect(entry?.differences.filter(({ rounding }) => !rounding)).toEqual([])
        expect(entry?.why).toMatch(/agrees; saved again by/)
      }
      await rm(folder, { recursive: true })
    },
  )

  it.each(['building', 'stages'] as const)(
    '%s: a row whose file is not given is compared with the test of its plot and date, and says so',
    async (kind) => {
      const [first, ...others] = tests
      if (!first) throw new Error('no tests')
      const renamed = { ...first, rerun: first.rerun.map((test) => ({ ...test, file: 'renamed.xlsx' })) }
      const { entry } = await rerun(reports[kind], [renamed, ...others])
      expect(entry?.differences).toContainEqual(
        expect.objectContaining({
          label: expect.stringMatching(/^file of /),
          recorded: 't1.xlsx',
          expected: 'renamed.xlsx',
        }),
      )
    },
  )

  it.each([
    ['a figure copied from a test', 'building', 'Homes', 'D12', number],
    ['the limit', 'building', 'Homes', 'D3', number],
    ['the number of homes', 'building', 'Homes', 'D4', (cell: string) => cell.replace('<v>20<', '<v>12<')],
    ['the verdict typed over', 'building', 'Building', 'A8', text],
    ['a stored result', 'building', 'Building', 'B16', number],
    ['a formula', 'building', 'Building', 'B16', (cell: string) => cell.replace('</f>', '*0.9</f>')],
    ['a figure copied from a test', 'stages', 'Allowance', 'P8', number],
    ['a share used', 'stages', 'Allowance', 'H9', number],
    ['a share of the target that is allowed', 'stages', 'Allowance', 'D3', number],
    ['whether the next trade may start', 'stages', 'Site', 'C5', text],
  ] as const)('differs by %s (%s), and says the cell', async (_, kind, sheet, address, change) => {
    const { entry, report } = await rerun(changed(kind, sheet, address, change))
    expect(entry?.outcome).toBe('differs')
    expect(report.counts.differs).toBe(1)
    expect(entry?.differences.map(({ cell }) => cell)).toContain(`${sheet}!${address}`)
  })

  it.each([
    [
      'a text made white',
      (book: PackageText) => {
        const white = book.addTo(
          'fonts',
          '<font><sz val="9"/><color rgb="FFFFFFFF"/><name val="Calibri"/></font>',
        )
        return book.restyle('Building', 'A8', (xf) => xf.replace(/fontId="\d+"/, `fontId="${white}"`))
      },
    ],
    [
      'a row hidden',
      (book: PackageText) => book.edit(book.sheet('Homes'), '<row r="12"', '<row hidden="1" r="12"'),
    ],
    [
      'a sheet hidden',
      (book: PackageText) => book.edit('xl/workbook.xml', /(name="Homes"[^>]*state=")visible/, '$1hidden'),
    ],
    [
      'the line that names its version taken out',
      (book: PackageText) => {
        const sheet = book.sheet('Building')
        const rows = book.text(sheet).match(/<row .*?<\/row>/gs) ?? []
        return book.edit(sheet, rows.at(-1) ?? '', '')
      },
    ],
    [
      'another sheet put first',
      (book: PackageText) =>
        book.edit(
          'xl/workbook.xml',
          /(<sheet [^>]*\/>)(<sheet [^>]*\/>)/,
          (_, first = '', second = '') => second + first,
        ),
    ],
    [
      'a link to another file',
      (book: PackageText) => {
        const links = book.sheet('Homes').replace(/([^/]+)$/, '_rels/$1.rels')
        return book.edit(links, 't2.xlsx', 'other.xlsx')
      },
    ],
  ] as const)('finds %s', async (_, change) => {
    const { entry } = await rerun(change(new PackageText(reports.building)).bytes)
    expect(entry?.outcome).toBe('differs')
  })

  it('cannot be read where one of its parts is damaged, and the others still are', async () => {
    const book = new PackageText(reports.building)
    const { entry } = await rerun(
      book.edit(book.sheet('Homes'), '<sheetViews>', '<sheetViews><sheetView>').bytes,
    )
    expect(entry?.outcome).toBe('cannot be read')
    expect(entry?.why).toMatch(/not well-formed/)
  })

  it('differs where a test was changed after the report was made of it', async () => {
    const record = flat(2, 'Flat 2', 0.42, 'acceptance', '2026-07-02')
    const bytes = await writeSummaryWorkbook(record)
    const other = { file: 'court/t2.xlsx', bytes, rerun: await rerunFile(bytes, 'court/t2.xlsx') }
    const { entry } = await rerun(reports.building, tests.with(1, other))
    expect(entry?.outcome).toBe('differs')
    expect(entry?.differences.map(({ cell }) => cell)).toContain('Homes!D12')
  })

  it('checks what is copied from the tests given where others are missing, and is passed over where none is', async () => {
    const { entry } = await rerun(reports.building, tests.slice(0, 2))
    expect(entry?.outcome).toBe('cannot be read')
    expect(entry?.why).toMatch(
      /copied from 2 tests .* agree: the other tests .* not among the files given \(t3\.xlsx\)$/,
    )
    const forged = changed('building', 'Homes', 'D12', number)
    const some = await rerun(forged, tests.slice(1, 3))
    expect(some.entry?.differences.map(({ cell }) => cell)).toEqual(['Homes!D12'])
    const { report } = await rerun(reports.stages, [])
    expect(report.tests).toEqual([])
    expect(report.passedOver).toEqual(['report.xlsx'])
  })
})

describe('on the command line', () => {
  let root: string
  const at = (name: string) => join(root, name)
  beforeAll(async () => {
    root = await mkdtemp(join(tmpdir(), 'several-'))
    await mkdir(at('court'))
    await Promise.all(tests.map(({ file, bytes }) => writeFile(at(file), bytes)))
    await writeFile(at('building.xlsx'), reports.building)
    await writeFile(at('forged.xlsx'), changed('building', 'Homes', 'D12', number))
  })
  afterAll(() => rm(root, { recursive: true }))

  it('is named with what was compared, and ends with 0, 1 or 2', async () => {
    const sound = await commandLine('rerun', at('building.xlsx'), at('court'))
    expect(sound.code).toBe(0)
    expect(sound.out).toMatch(/building\.xlsx: made again from its 3 tests, every figure/)
    expect(sound.out).toMatch(/^5 tests re-run, 1 report on them compared: /m)
    expect((await commandLine('rerun', at('forged.xlsx'), at('court'))).code).toBe(1)
    const alone = await commandLine('rerun', at('building.xlsx'))
    expect(alone.code).toBe(2)
    expect(String(alone.err)).toMatch(/give the files of its tests too/)
  })
})
