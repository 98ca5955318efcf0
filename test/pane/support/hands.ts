import type { Locator, Page } from 'playwright-core'

/** How somebody works the page: with keys alone, or with a finger on a tablet. */
export interface Hands {
  press(button: Locator): Promise<void>
  put(field: Locator, text: string): Promise<void>
  /** Values of a list, one after the other. */
  list(page: Page, label: (number: number) => string, values: readonly string[]): Promise<void>
  /** Readings from the given row on. */
  readings(
    page: Page,
    first: number,
    typed: readonly (readonly [pressure: string, flow: string])[],
  ): Promise<void>
  /** A reading that is cut off. */
  begin(page: Page, number: number, pressure: string, flow: string): Promise<void>
}

const cell = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true })

export const byKeyboard: Hands = {
  async press(button) {
    await button.focus()
    await button.page().keyboard.press('Enter')
  },
  async put(field, text) {
    await field.first().focus()
    await field.page().keyboard.type(text)
  },
  async list(page, label, values) {
    await cell(page, label(1)).focus()
    for (const value of values) await page.keyboard.type(`${value}\n`)
  },
  async readings(page, first, typed) {
    // Every row but the first is reached by Enter alone.
    await cell(page, `Pressure, reading ${first}`).focus()
    for (const [pressure, flow] of typed) await page.keyboard.type(`${pressure}\n${flow}\n`)
  },
  async begin(page, _number, pressure, flow) {
    await page.keyboard.type(`${pressure}\n${flow}`)
  },
}

/** Begins to count the keys that the page receives. */
export const countKeys = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const seen = window as unknown as { keysBeyondDigits: number }
    seen.keysBeyondDigits = 0
    window.addEventListener(
      'keydown',
      ({ key }) => {
        if (!/^\d$/.test(key)) seen.keysBeyondDigits += 1
      },
      true,
    )
  })

/** Keys received since that are no digit. */
export const countedKeys = (page: Page): Promise<number> =>
  page.evaluate(() => (window as unknown as { keysBeyondDigits: number }).keysBeyondDigits)

export const byTouch: Hands = {
  press: (button) => button.tap(),
  async put(field, text) {
    await field.first().tap()
    await field.page().keyboard.insertText(text)
  },
  async list(page, label, values) {
    for (const [i, value] of values.entries()) {
      await cell(page, label(i + 1)).tap()
      await page.keyboard.insertText(value)
    }
  },
  async readings(page, first, typed) {
    for (const [i, [pressure, flow]] of typed.entries()) await byTouch.begin(page, first + i, pressure, flow)
  },
  async begin(page, number, pressure, flow) {
    await cell(page, `Pressure, reading ${number}`).tap()
    await page.keyboard.insertText(pressure)
    await cell(page, `Air flow, reading ${number}`).tap()
    await page.keyboard.insertText(flow)
  },
}
