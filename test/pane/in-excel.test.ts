import { readFileSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { unzipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { modelFromLog } from '../addin/excel-wire/model-from-log.js'
import type { ModelWorkbook } from '../addin/excel-wire/workbook-model.js'
import { commandLine, folder } from '../service/support/command-line.js'
import { openInExcel } from './support/excel-page.js'
import { field, finding, outcome, pick, step } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }
let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const demo = (): ModelWorkbook => {
  const bytes = readFileSync(fileURLToPath(new URL('../demo/demo-log.xlsx', import.meta.url)))
  const workbook = modelFromLog(new Uint8Array(bytes), 'demo-log.xlsx')
  workbook.sheetNames = (file) => {
    const xml = new TextDecoder().decode(unzipSync(file)['xl/workbook.xml'])
    return [...xml.matchAll(/<sheet\b[^>]*?\bname="([^"]+)"/g)].map(([, name = '']) => name)
  }
  return workbook
}

describe('the pane beside a workbook, over the real Excel object model', () => {
  it('finds the readings, follows edits, jumps, and keeps the entries in the workbook', async () => {
    const workbook = demo()
    const { page, bridge, complaints } = await openInExcel(world, workbook)
    await step(page, 'On site')
    await page.getByRole('button', { name: 'Find the readings' }).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('meets')
    expect(await page.getByRole('button', { name: 'Open a test log' }).count()).toBe(0)

    bridge.edit('Log', 'F8', '9O.3')
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('not valid')
    await finding(page, 'unusable-entry').first().getByRole('button', { name: 'Go to Log!F8' }).click()
    await expect.poll(() => workbook.selected[0]?.Address, SOON).toBe('Log!F8')
    // In Excel cells are marked only when asked.
    expect(workbook.Worksheets.Indexer('Log').formats).toEqual([])
    await page.getByLabel('mark the cells in the sheet').check()
    await expect.poll(() => workbook.Worksheets.Indexer('Log').formats.length, SOON).toBeGreaterThan(0)
    bridge.edit('Log', 'F8', 93)
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('meets')
    await page.getByLabel('mark the cells in the sheet').uncheck()
    await expect.poll(() => workbook.Worksheets.Indexer('Log').formats.length, SOON).toBe(0)

    await step(page, 'Before')
    await field(page, 'Why 50 Pa was not reached').fill('atrium (invented)')
    await expect
      .poll(() => String(workbook.Settings.all.get('draughtbook.test')?.Value ?? ''), SOON)
      .toContain('atrium (invented)')
    // Another computer: a browser that knows nothing but the workbook.
    const verdict = await outcome(page).textContent()
    const { page: elsewhere } = await openInExcel(world, workbook)
    await expect.poll(() => outcome(elsewhere).textContent(), SOON).toBe(verdict)
    await step(elsewhere, 'Before')
    expect(await field(elsewhere, 'Why 50 Pa was not reached').inputValue()).toBe('atrium (invented)')
    expect(complaints).toEqual([])
  })

  it('takes the cells selected in Excel', async () => {
    const workbook = demo()
    const { page } = await openInExcel(world, workbook)
    await step(page, 'On site')
    workbook.selected = [workbook.active.GetRange('E6:E15')]
    await pick(page, 'Pressures', 'depressurisation')
    await page.getByRole('button', { name: 'Log!E6:E15' }).waitFor()
    workbook.selected = [workbook.active.GetRange('A1'), workbook.active.GetRange('C1')]
    await pick(page, 'Air flows', 'depressurisation')
    await page.getByRole('alert').getByText('Select one block of cells').waitFor()
    expect(await page.getByText('Log!A1').count()).toBe(0)
  })

  it('writes the summary into this workbook with its chart, twice without touching what is there', async () => {
    const workbook = demo()
    const { page } = await openInExcel(world, workbook)
    await step(page, 'On site')
    await page.getByRole('button', { name: 'Find the readings' }).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    await step(page, 'Result')
    const write = page.getByRole('button', { name: 'Write into this workbook' })
    await write.click()
    await page.getByText(/^Added Summary,/).waitFor()
    const chart = workbook.Worksheets.Indexer('Summary').Charts.all[0]
    expect(chart?.Axes.ValueAxis.ScaleType).toBe('Logarithmic')
    expect(chart?.Series.Items.map(({ Name }) => Name)).toContain('depressurisation, readings')
    await write.click()
    await page.getByText(/^Added Summary \(2\),/).waitFor()
    expect(workbook.Worksheets.Items.map(({ Name }) => Name).slice(0, 4)).toEqual([
      'Log',
      'Device ranges',
      'Openings',
      'Summary',
    ])
    expect(workbook.Worksheets.Indexer('Summary (2)').Charts.all).toHaveLength(1)
  })

  it('opens the summary as a new workbook, which re-runs as issued, when inserting fails', async () => {
    const workbook = demo()
    workbook.fail.set('InsertWorksheetsFromBase64', { code: 'GeneralException', message: 'internal error' })
    const { page } = await openInExcel(world, workbook)
    await step(page, 'On site')
    await page.getByRole('button', { name: 'Find the readings' }).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    await step(page, 'Result')
    await page.getByRole('button', { name: 'Write into this workbook' }).click()
    await page.getByRole('alert').getByText('Open the summary as a new workbook, or download it').waitFor()
    await page.getByRole('button', { name: 'Open as a new workbook' }).click()
    await page.getByText('The summary is open as a new workbook').waitFor()
    const [base64 = ''] = workbook.created
    const file = join(await folder(), 'opened.xlsx')
    await writeFile(file, Buffer.from(base64, 'base64'))
    const { code, out } = await commandLine('rerun', file)
    // Another machine may work a logarithm out to another last digit: then every figure agrees, to rounding.
    expect(out).toMatch(/1 test re-run: 1 (exactly as issued|agrees)/)
    expect(code).toBe(0)
  })

  it('says what an older Excel cannot do, and does the rest', async () => {
    const { page } = await openInExcel(world, demo(), { version: '1.9' })
    await step(page, 'On site')
    await page.getByRole('button', { name: 'Find the readings' }).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    await step(page, 'Result')
    expect(await page.getByRole('button', { name: 'Write into this workbook' }).isDisabled()).toBe(true)
    await page.getByText('This Excel cannot insert sheets').waitFor()
    expect(await page.getByRole('button', { name: 'Open as a new workbook' }).isEnabled()).toBe(true)
  })

  it('connects the spreadsheet functions, whose errors carry a message', async () => {
    const { page } = await openInExcel(world, demo())
    await page.waitForFunction(
      () => (window as unknown as { associated: Map<string, unknown> }).associated.size > 8,
    )
    const call = (id: string, values: unknown[]) =>
      page.evaluate(
        async ([name, given]) => {
          const { associated } = window as unknown as {
            associated: Map<string, (...values: unknown[]) => Promise<unknown>>
          }
          try {
            return await associated.get(name as string)?.(...(given as unknown[]), {
              parameterAddresses: ['Log!A1', 'Log!B1', 'Log!C1'],
            })
          } catch (error) {
            const { code, message } = error as { code: string; message: string }
            return `${code} ${message}`
          }
        },
        [id, values] as const,
      )
    expect(await call('AIRDENSITY', [20, 0, 101_325])).toBeCloseTo(101_325 / (287.055 * 293.15), 9)
    expect(await call('AIRDENSITY', ['warm', 0, 101_325])).toBe(
      '#VALUE! temperature in Log!A1 is the text "warm", not a number',
    )
  })
})
