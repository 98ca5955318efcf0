import { makeRerunReport, type RerunTest, rerunFile, shortNames } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'

async function archived(file: string, plot: string, seed: number, factor = 1): Promise<RerunTest> {
  const record = inventedRecord(seed)
  record.building.name = plot
  record.building.volume_m3 = (record.building.volume_m3 ?? 0) * factor
  record.test.id = `T-${plot}`
  const [test] = await rerunFile(await writeSummaryWorkbook(record), file)
  if (!test) throw new Error('no test came back')
  return test
}

const remarks = async (tests: RerunTest[]) =>
  Object.fromEntries(
    (await makeRerunReport(tests, '2030-01-15')).tests.map(({ file, remarks: r }) => [file, r]),
  )

describe('files of one re-run', () => {
  it('are told apart where their names were swapped', async () => {
    const found = await remarks([
      await archived('site/Plot 12.xlsx', 'Plot 1', 1),
      await archived('site/Plot 1.xlsx', 'Plot 12', 2),
      await archived('site/Plot 3 retest.xlsx', 'Plot 3', 3),
      await archived('site/scan0007.xlsx', 'Plot 4', 4),
    ])
    expect(found['site/Plot 12.xlsx']).toEqual([
      'the file name matches Plot 12, which is in Plot 1.xlsx; this file holds Plot 1',
    ])
    expect(found['site/Plot 1.xlsx']).toEqual([
      'the file name matches Plot 1, which is in Plot 12.xlsx; this file holds Plot 12',
    ])
    expect(found['site/Plot 3 retest.xlsx']).toBeUndefined()
    expect(found['site/scan0007.xlsx']).toBeUndefined()
  })

  const numbered = async (file: string, plot: string, testNumber: string) => ({
    ...(await archived(file, plot, 1)),
    testNumber,
  })

  it('are told apart where one is named after the number of another test', async () => {
    const found = await remarks([
      await numbered('month/TB-402.xlsx', 'Byre', 'TB-401'),
      await numbered('month/second.xlsx', 'Kiln', 'TB-402'),
      // After its own building, whatever else: perhaps the test that it replaces.
      await numbered('month/Barn, in place of TB-402.xlsx', 'Barn', 'TB-403'),
      await numbered('month/TB-404.xlsx', 'Mill', 'TB-404'),
    ])
    expect(found).toEqual({
      'month/TB-402.xlsx': ['the file name matches TB-402, which is in second.xlsx; this file holds TB-401'],
      'month/second.xlsx': undefined,
      'month/Barn, in place of TB-402.xlsx': undefined,
      'month/TB-404.xlsx': undefined,
    })
  })

  it('are not named after a test number of few digits: it may be that of a plot or a day', async () => {
    const found = await remarks([
      await numbered('Mill House 12.xlsx', 'Barn', '7'),
      await numbered('b.xlsx', 'Kiln', '12'),
    ])
    expect(Object.values(found)).toEqual([undefined, undefined])
  })

  it('are named where they are of the same test: copies, and a reissue with another volume', async () => {
    const found = await remarks([
      await archived('a/Plot 5.xlsx', 'Plot 5', 5),
      await archived('b/Plot 5.xlsx', 'Plot 5', 5),
      await archived('c/reissued.xlsx', 'Plot 5', 5, 1.3),
    ])
    expect(found['a/Plot 5.xlsx']).toEqual([
      'the same record is in b/Plot 5.xlsx',
      'reissued.xlsx has the same test number and date but a different record: find out which one counts',
    ])
    expect(found['c/reissued.xlsx']?.[0]).toMatch(/^a\/Plot 5\.xlsx and b\/Plot 5\.xlsx have the same/)
  })

  it('says of an agreeing file that is not signed what that leaves open', async () => {
    const test = await archived('x.xlsx', 'Plot 6', 6)
    expect(test.outcome).toBe('exactly as issued')
    expect(test.why).toMatch(/not signed, so a workbook made from changed readings would agree too$/)
  })
})

describe('names of files', () => {
  it('are as short as tells them apart', () => {
    const paths = [
      '/x/2026/09/p1.xlsx',
      '/x/2026/10/p1.xlsx',
      '/x/2026/10/p2.xlsx',
      'C:\\tests\\p3.xlsx',
      'p1.xlsx',
    ]
    expect([...shortNames(paths).values()].sort()).toEqual([
      '09/p1.xlsx',
      '10/p1.xlsx',
      'p1.xlsx',
      'p2.xlsx',
      'p3.xlsx',
    ])
  })
})
