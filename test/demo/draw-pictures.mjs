// Draws the pictures of README.md anew, with the built service, Chromium, LibreOffice and poppler: `npm run pictures`.
import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { createApp } from '../../service/dist/app.js'
import { defaultSettings } from '../../service/dist/settings/settings.js'

const at = (path) => fileURLToPath(new URL(path, import.meta.url))
const LOG = at('demo-log.xlsx')
const picture = (name) => at(`pictures/${name}.png`)
const run = (command, args) =>
  execFileSync(command, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })
const folder = mkdtempSync(join(tmpdir(), 'draughtbook-pictures-'))

/** First page of the demo's summary, and its chart alone. */
function drawSummary() {
  const workbook = join(folder, 'summary.xlsx')
  const pdf = join(folder, 'summary.pdf')
  run(process.execPath, [at('../../service/bin/draughtbook.mjs'), 'evaluate', LOG, '--out', workbook])
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`
  run('soffice', [profile, '--headless', '--convert-to', 'pdf', '--outdir', folder, workbook])
  const first = ['-png', '-singlefile', '-f', '1', '-l', '1']
  run('pdftoppm', [...first, '-r', '104', pdf, picture('summary-page').replace(/\.png$/, '')])
  // The chart stands between its heading and the next one, within the margins that the headings show.
  const words = run('pdftotext', ['-bbox', '-f', '1', '-l', '1', pdf, '-'])
  const placeOf = (word) => {
    const [, ...place] =
      new RegExp(`xMin="([\\d.]+)" yMin="([\\d.]+)" xMax="[\\d.]+" yMax="([\\d.]+)">${word}<`).exec(words) ??
      []
    const [left, top, bottom] = place.map(Number)
    return { left, top, bottom }
  }
  const [above, below] = [placeOf('Leakage(?=</word>\\s*<word[^>]*>curve)'), placeOf('Findings')]
  const [, width] = /<page width="([\d.]+)"/.exec(words) ?? []
  const scale = 122 / 72
  const pixels = (points) => String(Math.round(points * scale))
  const crop = [
    '-x',
    pixels(above.left - 1),
    '-y',
    pixels(above.bottom + 2),
    '-W',
    pixels(width - 2 * above.left + 2),
    '-H',
    pixels(below.top - above.bottom - 8),
  ]
  run('pdftoppm', [...first, '-r', '122', ...crop, pdf, picture('leakage-curve').replace(/\.png$/, '')])
}

const field = (page, label) =>
  page
    .locator('input:visible, select:visible')
    .and(page.getByLabel(new RegExp(`^\\s*${label}`)))
    .first()

/** A test under way: an invented hall in its first run. */
async function typeTwoReadings(page) {
  await field(page, 'Building').fill('Hall 3 (invented)')
  await field(page, 'Internal volume').fill('2400')
  await field(page, 'Test date').fill('2026-10-14')
  await field(page, 'Target').selectOption('passive-house-new')
  await page.locator('.steps').getByRole('button', { name: 'On site' }).click()
  await field(page, 'Indoor temperature').fill('20')
  await field(page, 'Outdoor temperature').fill('9')
  await field(page, 'Barometric pressure').fill('1004 hPa')
  await page.getByLabel('Zero-flow pressure before, fan covered, value 1', { exact: true }).focus()
  await page.keyboard.type('-1.2\n-1.0\n-1.1\n')
  await page.getByLabel('Pressure, reading 1', { exact: true }).focus()
  await page.keyboard.type('60\n600\n52\n548\n')
  await page.getByText('Running estimate:').waitFor()
}

async function drawPane() {
  const app = createApp({ settings: { ...defaultSettings, pane: at('../../addin/dist') } })
  const server = createServer(app)
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve))
  const browser = await chromium.launch({
    executablePath: ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find((place) =>
      existsSync(place),
    ),
    args: ['--headless', '--no-sandbox', '--disable-gpu'],
  })
  const shot = async (name, { width, height, ...options }, work) => {
    const context = await browser.newContext({ viewport: { width, height }, ...options })
    const page = await context.newPage()
    await page.goto(`http://127.0.0.1:${server.address().port}/`)
    await page.locator('.starting').waitFor({ state: 'detached' })
    await page.getByText('works offline').first().waitFor()
    await work(page)
    // Until nothing on it moves any more.
    await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished)))
    await page.screenshot({ path: picture(name) })
    await context.close()
  }
  const onSite = async (page) => {
    await typeTwoReadings(page)
    // Scrolled until it stays where it is to stand: the page itself moves its focused field into view.
    await page.waitForFunction(() => {
      const heading = [...document.querySelectorAll('summary')].find((one) =>
        one.textContent.includes('While reading'),
      )
      let scrolled = heading.parentElement
      while (!/auto|scroll/.test(getComputedStyle(scrolled).overflowY)) scrolled = scrolled.parentElement
      const head = document.querySelector('.steps').getBoundingClientRect().bottom
      const off = heading.getBoundingClientRect().top - head - 32
      scrolled.scrollBy({ top: off, behavior: 'instant' })
      return Math.abs(off) < 2
    })
  }
  await shot('pane-on-site-phone', { width: 350, height: 760, hasTouch: true }, onSite)
  await shot('pane-on-site-tablet', { width: 800, height: 1000, hasTouch: true, colorScheme: 'dark' }, onSite)
  await shot('pane-with-log', { width: 1280, height: 860 }, async (page) => {
    await page.setInputFiles('input[aria-label="Test log"]', LOG)
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await page.locator('[data-outcome]').waitFor()
    await page.locator('.steps').getByRole('button', { name: 'On site' }).click()
    await page.getByText('Calculated by the service').waitFor()
  })
  await browser.close()
  server.closeAllConnections()
  server.close()
}

try {
  drawSummary()
  await drawPane()
} finally {
  rmSync(folder, { recursive: true, force: true })
}
