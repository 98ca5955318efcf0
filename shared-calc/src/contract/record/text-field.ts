import { z } from 'zod'

/** Longest text of one field: well under the 32 767 characters a spreadsheet cell can hold. */
export const LONGEST_TEXT = 4000

/** Text typed by a person: at most {@link LONGEST_TEXT} characters. */
export const textField = (term: string) =>
  z
    .string({ error: (issue) => `${term} must be text${issue.input === undefined ? '; it is missing' : ''}` })
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
    .refine(isCalendarDate, { error: `${term} must be a date of the form 2026-10-14` })
    .meta({ title: term, format: 'date' })

function isCalendarDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false
  const date = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text)
}
