import { z } from 'zod'
import { kindOf } from '../check.js'

/** Longest text of one field: well under the 32 767 characters a spreadsheet cell can hold. */
export const LONGEST_TEXT = 4000

/** Text typed by a person: at most {@link LONGEST_TEXT} characters. */
export const textField = (term: string) =>
  z
    .string({ error: ({ input }) => (input === undefined ? `${term} is missing` : `${term} must be text`) })
    .max(LONGEST_TEXT, { error: `${term} is longer than ${LONGEST_TEXT} characters` })
    .meta({ title: term })

/** A name that must not be blank. */
export const nameField = (term: string) => textField(term).regex(/\S/, { error: `${term} is blank` })

/** A calendar date, YYYY-MM-DD, that exists. */
export const dateField = (term: string) =>
  z
    .string({
      error: (issue) =>
        issue.input === undefined ? `${term} is missing` : `${term} must be text of the form 2026-10-14`,
    })
    .refine(isCalendarDate, {
      error: ({ input }) => `${term} must be a date of the form 2026-10-14, not ${kindOf(input)}`,
    })
    .meta({ title: term, format: 'date' })

function isCalendarDate(text: string): boolean {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? []
  if (year === undefined) return false
  // The day before the first of the next month. 400 years on, where the calendar is the same: years below 100 would be taken for others.
  const lastDay = new Date(Date.UTC(400 + Number(year), Number(month), 0)).getUTCDate()
  return Number(month) >= 1 && Number(month) <= 12 && Number(day) >= 1 && Number(day) <= lastDay
}

/**
 * Characters no workbook can hold: XML 1.0 has no way to write them (section 2.2), and half a surrogate pair is not a
 * character.
 */
const UNHELD =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** A text as a workbook can hold it: what it cannot hold becomes U+FFFD, and a lone carriage return a line feed. */
export const heldText = (text: string): string =>
  // Most texts need no change.
  text.replace(UNHELD, '\ufffd').replace(/\r\n?/g, '\n')

/** Whether a text holds a character that no workbook can hold. */
const isHeld = (text: string): boolean => text.search(UNHELD) < 0

/** Every text of a record that a workbook cannot hold, by its path. */
export function unheldTexts(value: unknown): string[] {
  const found: string[] = []
  // Nearly all records hold only such texts: asked first, without paths.
  if (!isHeldThroughout(value)) search(value, '', found)
  return found
}

function isHeldThroughout(value: unknown): boolean {
  if (typeof value === 'string') return isHeld(value)
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i += 1)
      if (typeof value[i] !== 'number' && !isHeldThroughout(value[i])) return false
  } else if (typeof value === 'object' && value !== null)
    for (const key in value) {
      const item = (value as Record<string, unknown>)[key]
      if (typeof item !== 'number' && !isHeldThroughout(item)) return false
    }
  return true
}

function search(value: unknown, path: string, found: string[]): void {
  if (typeof value === 'string') {
    if (!isHeld(value)) found.push(path)
  } else if (Array.isArray(value)) {
    for (const [i, item] of value.entries()) search(item, `${path}[${i}]`, found)
  } else if (typeof value === 'object' && value !== null)
    for (const [key, item] of Object.entries(value)) search(item, path === '' ? key : `${path}.${key}`, found)
}
