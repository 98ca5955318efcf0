import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import JSZip from 'jszip'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { folder } from '../service/support/command-line.js'
import { cameraPicture, jpegOf, TAKEN_AT } from './support/camera-picture.js'
import { downloadOf, field, LOG_INPUT, openDemo, step } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const stop = (page: Page, id: string) => page.locator(`[data-stop="${id}"]`)

async function takePhoto(page: Page, of: string, [width, height] = [2400, 1800]): Promise<void> {
  // A leak of the round stands in the leak log too: the first of the two is taken.
  await page
    .locator(`input[aria-label="Photo of ${of}"]`)
    .first()
    .setInputFiles({
      name: 'IMG_0001.jpg',
      mimeType: 'image/jpeg',
      buffer: await cameraPicture(page, width, height),
    })
}

/** The test on show as it is handed over. */
async function handedOver(page: Page): Promise<{ name: string; bytes: Uint8Array }> {
  await page.getByRole('button', { name: 'All tests' }).click()
  return downloadOf(page, () =>
    page
      .locator('.kept-test[aria-current]')
      .getByRole('button', { name: /^Save as a file/ })
      .click(),
  )
}

describe('a leak round with photos', () => {
  it('ticks, notes and photographs; the photo is small, upright, without place and time, and goes with the test', async () => {
    const { page, complaints } = await world.open()
    await openDemo(page)
    await page.getByText('Leak round', { exact: true }).click()
    await stop(page, 'keyholes').getByRole('button', { name: 'tight' }).click()
    await stop(page, 'hatches').getByRole('button', { name: 'leak found' }).click()
    const leak = stop(page, 'hatches').locator('.list-row')
    expect(await leak.getByLabel('Kind').inputValue()).toBe('hatch')
    await leak.getByLabel('or area').fill('12')
    await takePhoto(page, 'leak 1')
    await leak.locator('[data-photo="leak-1.jpg"]').waitFor()
    await expect
      .poll(() => leak.locator('canvas').evaluate((one: HTMLCanvasElement) => [one.width, one.height]), SOON)
      .toEqual([120, 160])
    await page.locator('.round-sum', { hasText: '12 cm² found, not fixed' }).waitFor()
    await page.getByText('2 of 12 places · 1 leak').waitFor()
    await page.locator('[data-saved="yes"]').waitFor()

    await page.reload()
    await page.getByText('Leak round', { exact: true }).click()
    await stop(page, 'hatches').locator('[data-photo="leak-1.jpg"] canvas[width="120"]').waitFor()

    const { name, bytes } = await handedOver(page)
    const zip = await JSZip.loadAsync(bytes)
    const photo = (await zip.file('photos/leak-1.jpg')?.async('uint8array')) ?? new Uint8Array()
    // The camera lay on its side: 2400 × 1800 is shown, and kept, as 1800 × 2400, then 1200 × 1600.
    const { segments, ...size } = jpegOf(photo)
    expect(size).toEqual({ width: 1200, height: 1600 })
    // What the browser may add says how to show it: the format and the colour profile.
    expect(segments.filter((name) => name !== 'JFIF' && name !== 'ICC_')).toEqual([])
    expect(Buffer.from(photo).includes('Exif')).toBe(false)
    expect(Buffer.from(photo).includes(TAKEN_AT)).toBe(false)
    const record = JSON.parse((await zip.file('record.json')?.async('string')) ?? '{}')
    expect(record.leaks.list).toMatchObject([{ place: 'hatches', kind: 'hatch', photo: 'leak-1.jpg' }])

    await page.getByRole('button', { name: 'Test', exact: true }).click()
    await step(page, 'Result')
    const summary = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Download the summary workbook' }).click(),
    )
    const media = Object.keys((await JSZip.loadAsync(summary.bytes)).files).filter((path) =>
      /^xl\/media\/.*\.jpe?g$/.test(path),
    )
    expect(media).toHaveLength(1)

    const { page: office } = await world.open()
    await office.setInputFiles(LOG_INPUT, { name, mimeType: 'application/zip', buffer: Buffer.from(bytes) })
    await office.locator('.book-name', { hasText: 'demo-log.xlsx' }).waitFor()
    await step(office, 'On site')
    await office.getByText('Leak round', { exact: true }).click()
    await stop(office, 'hatches').locator('[data-photo="leak-1.jpg"] canvas[width="120"]').waitFor()
    expect(
      await stop(office, 'keyholes').getByRole('button', { name: 'tight' }).getAttribute('aria-pressed'),
    ).toBe('true')
    expect(complaints).toEqual([])
  })

  it('a removed photo is left out of the file, and Undo brings it back', async () => {
    const { page } = await world.open()
    await field(page, 'Building *').fill('Barn (invented)')
    await step(page, 'On site')
    await page.getByText('Photos of the set-up', { exact: true }).click()
    await page.getByRole('button', { name: 'Add a photo' }).click()
    await takePhoto(page, 'set-up 1', [800, 600])
    await page.locator('[data-photo="set-up-1.jpg"] canvas[width="120"]').waitFor()
    await page.getByRole('button', { name: 'Remove the photo of set-up 1' }).click()
    await page.locator('[data-photo]').waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.locator('[data-photo="set-up-1.jpg"] canvas[width="120"]').waitFor()
    await page.getByRole('button', { name: 'Remove the photo of set-up 1' }).click()
    await page.locator('[data-photo]').waitFor({ state: 'detached' })
    const { bytes } = await handedOver(page)
    expect(Object.keys((await JSZip.loadAsync(bytes)).files)).toEqual(['test.json'])
  })

  it('of 20 MB is drawn small while the page goes on, and is not lost', async () => {
    const { page, complaints } = await world.open()
    await field(page, 'Building *').fill('Barn (invented)')
    await step(page, 'On site')
    await page.getByText('Photos of the set-up', { exact: true }).click()
    await page.getByRole('button', { name: 'Add a photo' }).click()
    const large = await cameraPicture(page, 4800, 3600)
    // Phones write previews and depth maps behind the picture: what follows its end is no part of it (ISO/IEC 10918-1, B.1.1.3).
    const file = join(await folder(), 'IMG_0002.jpg')
    await writeFile(file, Buffer.concat([large, Buffer.alloc(20e6 - large.length, 7)]))
    // The page holds the picture back until something was typed: it waits for nothing.
    await page.evaluate(() => {
      const { postMessage } = Worker.prototype
      const typed = new Promise((resolve) => Object.assign(window, { typed: resolve }))
      Worker.prototype.postMessage = function (...given: [unknown]) {
        if (given[0] instanceof Blob) void typed.then(() => postMessage.apply(this, given))
        else postMessage.apply(this, given)
      }
    })
    const box = page.locator('.photo-box', { has: page.locator('input[aria-label="Photo of set-up 1"]') })
    await box.locator('input').setInputFiles(file)
    await box.getByText('Adding …').waitFor()
    await field(page, 'Indoor temperature').fill('21')
    await page.evaluate(() => (window as unknown as { typed: () => void }).typed())
    await page.locator('[data-photo="set-up-1.jpg"] canvas[width="120"]').waitFor()
    await page.locator('[data-saved="yes"]').waitFor()
    await page.reload()
    await expect.poll(() => field(page, 'Indoor temperature').inputValue(), SOON).toBe('21')
    const { bytes } = await handedOver(page)
    const photo = await (await JSZip.loadAsync(bytes)).file('photos/set-up-1.jpg')?.async('uint8array')
    // On its side: 4800 × 3600 is shown as 3600 × 4800.
    expect(jpegOf(photo ?? new Uint8Array())).toMatchObject({ width: 1200, height: 1600 })
    expect(photo?.length).toBeLessThan(1e6)
    expect(complaints).toEqual([])
  })

  it('says so where a file is no picture', async () => {
    const { page } = await world.open()
    await field(page, 'Building *').fill('Barn (invented)')
    await step(page, 'On site')
    await page.getByText('Photos of the set-up', { exact: true }).click()
    await page.getByRole('button', { name: 'Add a photo' }).click()
    await page.locator('input[aria-label="Photo of set-up 1"]').setInputFiles({
      name: 'note.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('no picture'),
    })
    await page.getByRole('alert').getByText('not a picture that the browser can read').waitFor()
    expect(await page.locator('[data-photo]').count()).toBe(0)
  })
})
