import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Locator, Page } from 'playwright-core'

/** Where a log is handed to the page. */
export const LOG_INPUT = 'input[aria-label="Test log"]'

const DEMO = fileURLToPath(new URL('../../demo/demo-log.xlsx', import.meta.url))

/** Opens a log on the page twin and waits until its grid stands. */
export async function openLog(
  page: Page,
  file: string | { name: string; buffer: Buffer } = DEMO,
): Promise<void> {
  const given = typeof file === 'string' ? file : { ...file, mimeType: 'application/octet-stream' }
  await page.setInputFiles(LOG_INPUT, given)
  const name = typeof file === 'string' ? (file.split('/').at(-1) ?? '') : file.name
  await page.locator('.book-name', { hasText: name }).waitFor()
}

/** Opens the demonstration log and accepts it as it is understood; ends with the verdict on show. */
export async function openDemo(page: Page): Promise<void> {
  await openLog(page)
  await page.getByRole('button', { name: 'Accept and calculate' }).click()
  await outcome(page).waitFor()
}

export const outcome = (page: Page): Locator => page.locator('[data-outcome]')
export const finding = (page: Page, rule: string): Locator => page.locator(`[data-rule="${rule}"]:visible`)
export const origin = (page: Page): Locator => page.locator('[data-origin]')

/** A field of the form by how its label begins; buttons that name the field too are left out. */
export const field = (page: Page, label: string): Locator =>
  page
    .locator('input:visible, select:visible, textarea:visible')
    .and(page.getByLabel(new RegExp(`^\\s*${label.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`)))

/** Selects cells of the sheet on show by typing their address. */
export async function select(page: Page, address: string): Promise<void> {
  const box = field(page, 'Selected cells')
  await box.fill(address)
  await box.press('Enter')
}

/** Types into a cell of the sheet on show. */
export async function type(page: Page, address: string, text: string): Promise<void> {
  await select(page, address)
  const content = page.getByLabel(`Content of cell ${address}`, { exact: true })
  await content.fill(text)
  await content.press('Enter')
}

/** Presses a role's button, so that the selected cells take that role. */
export async function pick(
  page: Page,
  role: string,
  direction: 'depressurisation' | 'pressurisation',
): Promise<void> {
  await page
    .getByRole('button', { name: `${role}, ${direction}: take the selected cells`, exact: true })
    .click()
}

/** The bytes of the file that a click downloads. */
export async function downloadOf(
  page: Page,
  click: () => Promise<void>,
): Promise<{ name: string; bytes: Uint8Array }> {
  const [download] = await Promise.all([page.waitForEvent('download'), click()])
  return { name: download.suggestedFilename(), bytes: new Uint8Array(await readFile(await download.path())) }
}

/** Puts a step of the job on show, and waits until all of it is drawn. */
export async function step(page: Page, name: 'Before' | 'On site' | 'Result'): Promise<void> {
  await page.locator('.steps').getByRole('button', { name }).click()
  await page.locator('.step:not([hidden])[aria-busy]').waitFor({ state: 'detached' })
}

/** Puts a view on show; those of the office stand behind one button on a narrow screen. */
export async function toView(page: Page, name: string): Promise<void> {
  const office = page.getByRole('button', { name: 'Office', exact: true })
  const view = page.getByRole('button', { name, exact: true })
  if (!(await view.isVisible()) && (await office.isVisible())) await office.click()
  await view.click()
}
