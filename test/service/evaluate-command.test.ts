import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { evaluate } from '@draughtbook/shared-calc'
import { readSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from './support/command-line'
import { demoRecord } from './support/record'

async function recordFile(record = demoRecord()) {
  const here = await folder()
  const file = join(here, 'plot-7.json')
  await writeFile(file, JSON.stringify(record))
  return { here, file }
}

describe('draughtbook evaluate', () => {
  it('prints verdict, margin, results and findings, and writes the workbook beside the record', async () => {
    const { here, file } = await recordFile()
    const { code, out, err } = await commandLine('evaluate', file)
    const summary = join(here, 'plot-7-summary.xlsx')
    expect([code, err]).toEqual([0, []])
    expect(out).toMatch(/n50: 0\.3\d\d 1\/h/)
    expect(out).toMatch(/Verdict +meets the target "Passive house, new"/)
    expect(out).toMatch(/Margin +n50 \(mean\) is 0\.3\d 1\/h, 0\.2\d 1\/h below the limit of 0\.6 1\/h/)
    expect(out).toMatch(/Sealing +none needed/)
    expect(out).toMatch(/Findings +none invalidates the test; 4 cautions, 3 notes/)
    expect(out).toMatch(
      /where: calibration due date of the pressure gauge \(pressureGauge\.calibrationDue\)\n +what to do: /,
    )
    expect(out).toContain(`Workbook   ${summary}`)
    expect((await readSummaryWorkbook(await readFile(summary))).record).toEqual(demoRecord())
    expect((await readdir(here)).sort()).toEqual(['plot-7-summary.xlsx', 'plot-7.json'])
  })

  it('prints the evaluation and nothing else with --json', async () => {
    const { here, file } = await recordFile()
    const { out, err } = await commandLine('evaluate', file, '--json')
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(evaluate(demoRecord()))))
    expect(err).toEqual([])
    expect(await readdir(here)).toEqual(['plot-7.json'])
    const traced = await commandLine('evaluate', file, '--json', '--trace')
    expect(JSON.parse(traced.out).trace.length).toBeGreaterThan(50)
  })

  it('replaces a workbook of the same test and the one named by --out, but no other unasked', async () => {
    const { here, file } = await recordFile()
    const beside = join(here, 'plot-7-summary.xlsx')
    await commandLine('evaluate', file)
    expect((await commandLine('evaluate', file)).code).toBe(0)
    await writeFile(beside, 'an archived file')
    const refused = await commandLine('evaluate', file)
    expect([refused.code, refused.out]).toEqual([2, ''])
    expect(refused.err[0]).toMatch(/already exists with other content; use --force to replace it/)
    expect(await readFile(beside, 'utf8')).toBe('an archived file')
    expect((await commandLine('evaluate', file, '--force')).code).toBe(0)
    const other = join(here, 'other.json')
    await writeFile(
      other,
      JSON.stringify({ ...demoRecord(), building: { ...demoRecord().building, name: 'B' } }),
    )
    expect((await commandLine('evaluate', other, '--out', beside)).code).toBe(0)
  })

  it('never writes over its input, nor to a name that is no workbook', async () => {
    const { here, file } = await recordFile()
    await commandLine('evaluate', file)
    const workbook = join(here, 'plot-7-summary.xlsx')
    const over = await commandLine('evaluate', workbook, '--out', workbook)
    expect([over.code, over.err.length]).toEqual([2, 1])
    expect(over.err[0]).toMatch(/input itself/)
    expect((await commandLine('evaluate', file, '--out', join(here, 'x.txt'))).code).toBe(2)
    const nowhere = await commandLine('evaluate', file, '--out', join(here, 'none', 'x.xlsx'))
    expect(nowhere.err[0]).toMatch(/cannot be written: there is no folder .*none/)
  })

  it('reads the record out of one of our own workbooks', async () => {
    const { here, file } = await recordFile()
    await commandLine('evaluate', file)
    const { code, out } = await commandLine('evaluate', join(here, 'plot-7-summary.xlsx'), '--json')
    expect(code).toBe(0)
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(evaluate(demoRecord()))))
  })

  it('says how much to seal and that a missed target is still done', async () => {
    const record = demoRecord()
    record.target = { quantity: 'n50', limit: 0.2 }
    const { file } = await recordFile(record)
    const { code, out } = await commandLine('evaluate', file)
    expect(code).toBe(0)
    expect(out).toMatch(/Verdict +fails/)
    expect(out).toMatch(/Sealing +about \d+ cm² still to seal \(one hole of/)
  })

  it('shows no control character of a file on the screen', async () => {
    const record = demoRecord()
    record.building.name = 'Plot \u202e7'
    const { file } = await recordFile(record)
    expect((await commandLine('evaluate', file)).out).toContain('Plot \\u202e7')
  })
})

describe('draughtbook check', () => {
  it('lists the findings and writes nothing', async () => {
    const { here, file } = await recordFile()
    const { code, out } = await commandLine('check', file)
    expect(code).toBe(0)
    expect(out).toMatch(/^Findings +none invalidates/)
    const json = await commandLine('check', file, '--json')
    expect(JSON.parse(json.out)).toEqual(evaluate(demoRecord()).findings)
    expect(await readdir(here)).toEqual(['plot-7.json'])
  })
})
