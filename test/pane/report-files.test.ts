import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import JSZip from 'jszip'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app.js'
import { modelFromLog } from '../addin/excel-wire/model-from-log.js'
import { settings } from '../service/support/settings.js'
import { numbers, ofPdf, poppler, printedByLibreOffice } from '../support/pdf-text.js'
import { plainPhoto } from '../workbook/support/made-photo.js'
import { cameraPicture } from './support/camera-picture.js'
import { openInExcel } from './support/excel-page.js'
import { downloadOf, openDemo, outcome, step } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
let library: string
let server: Server
let base: string
beforeAll(async () => {
  world = await World.start()
  library = await mkdtemp(join(tmpdir(), 'draughtbook-firm-'))
  await mkdir(join(library, 'firm'))
  await writeFile(join(library, 'firm', 'firm.json'), '{ "name": "Invented Testers" }')
  await writeFile(join(library, 'firm', 'logo.jpg'), plainPhoto(120, 60))
  server = createServer(createApp({ settings: settings({ library, pane: world.folder }) }))
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
})
afterAll(async () => {
  await world?.stop()
  await rm(library, { recursive: true, force: true })
})

async function photographLeak(page: Page): Promise<void> {
  await step(page, 'On site')
  await page.getByText('Leak round', { exact: true }).click()
  const stop = page.locator('[data-stop="hatches"]')
  await stop.getByRole('button', { name: 'leak found' }).click()
  await page
    .locator('input[aria-label="Photo of leak 1"]')
    .first()
    .setInputFiles({
      name: 'IMG_0001.jpg',
      mimeType: 'image/jpeg',
      buffer: await cameraPicture(page, 800, 600),
    })
  await stop.locator('[data-photo="leak-1.jpg"] canvas[width="120"]').waitFor()
  await step(page, 'Result')
}

const demoWorkbook = async () =>
  modelFromLog(
    new Uint8Array(await readFile(new URL('../demo/demo-log.xlsx', import.meta.url))),
    'demo-log.xlsx',
  )

const press = (page: Page, name: string) => downloadOf(page, () => page.getByRole('button', { name }).click())

const imagesIn = async (pdf: Uint8Array) =>
  (await poppler('pdfimages', pdf, '-list')).trim().split('\n').slice(2).length

describe('summary and test report as a PDF from the page', () => {
  it('has the same numbers as the workbook of the page, with photo, logo and the firm’s name; also where the service has gone', async () => {
    const { page, complaints } = await world.open(base, { keepsPage: false })
    await openDemo(page)
    await photographLeak(page)
    await page.locator('html[data-works-alone]').waitFor({ timeout: 60_000 })
    const { bytes: workbook } = await press(page, 'Download the summary workbook')
    const { name, bytes: pdf } = await press(page, 'Download as PDF')
    await page.getByText(`Downloaded ${name}.`).waitFor()
    expect(name).toMatch(/-2026-10-14-summary\.pdf$/)
    expect(await poppler('pdfinfo', pdf)).toMatch(/Tagged:\s+yes/)
    expect(await imagesIn(pdf)).toBe(2)
    const text = await ofPdf(pdf)
    expect(text).toContain('Invented Testers')
    expect(text).not.toContain('left out')
    const media = Object.keys((await JSZip.loadAsync(workbook)).files).filter((path) =>
      /^xl\/media\/.*\.jpe?g$/.test(path),
    )
    expect(media).toHaveLength(2)
    const shown = numbers(text)
    expect(shown.length).toBeGreaterThan(250)
    const printed = numbers(await printedByLibreOffice(workbook))
    // LibreOffice leaves out the label at the upper end of an axis.
    const missing = shown.filter((number) => !printed.includes(number))
    expect(missing.length).toBeLessThanOrEqual(1)
    expect(shown).toEqual([...printed, ...missing].sort())

    // The service has gone: fonts, logo and code are at hand.
    server.closeAllConnections()
    await new Promise((resolve) => server.close(resolve))
    const { bytes: again } = await press(page, 'Download as PDF')
    expect(Buffer.from(again).equals(Buffer.from(pdf))).toBe(true)
    expect(complaints.filter((words) => !/Failed to load resource|net::ERR/.test(words))).toEqual([])
  })
})

describe('photos and PDF beside a workbook in Excel', () => {
  it('keeps a photo in the workbook, shows it again on another computer, and writes it into the PDF', async () => {
    const workbook = await demoWorkbook()
    const { page, complaints } = await openInExcel(world, workbook)
    await step(page, 'On site')
    await page.getByRole('button', { name: 'Find the readings' }).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    await photographLeak(page)
    expect(workbook.CustomXmlParts.all).toHaveLength(1)
    expect(workbook.CustomXmlParts.all[0]?.xml).toContain('name="leak-1.jpg"')
    const { bytes: pdf } = await press(page, 'Download as PDF')
    expect(await imagesIn(pdf)).toBe(1)
    await expect
      .poll(() => String(workbook.Settings.all.get('draughtbook.test')?.Value ?? ''), SOON)
      .toContain('leak-1.jpg')
    expect(complaints).toEqual([])

    const { page: elsewhere } = await openInExcel(world, workbook)
    await step(elsewhere, 'On site')
    await elsewhere.getByText('Leak round', { exact: true }).click()
    await elsewhere.locator('[data-stop="hatches"] [data-photo="leak-1.jpg"] canvas[width="120"]').waitFor()
    await elsewhere.getByRole('button', { name: 'Remove the photo of leak 1' }).first().click()
    await expect
      .poll(() => String(workbook.Settings.all.get('draughtbook.test')?.Value ?? ''), SOON)
      .not.toContain('leak-1.jpg')
    // Undo could still bring it back; it goes when the workbook is opened the next time.
    expect(workbook.CustomXmlParts.all).toHaveLength(1)
    await openInExcel(world, workbook)
    await expect.poll(() => workbook.CustomXmlParts.all.length, SOON).toBe(0)
  })

  it('says where Excel lets the pane save no files', async () => {
    const { page } = await openInExcel(world, await demoWorkbook(), { platform: 'Mac' })
    await step(page, 'Result')
    await page.getByText('Excel on a Mac does not let the pane save files').waitFor()
    expect(await page.getByRole('button', { name: 'Download as PDF' }).isDisabled()).toBe(true)
  })
})
