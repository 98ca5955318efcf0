import type { z } from 'zod'
import { anyOf } from './record/choices.js'

/** A number as messages print it: a proper minus sign, and its digits in threes from five on. */
export function printed(value: number): string {
  const text = String(value).replace('-', '−')
  // Most numbers have fewer digits than that.
  if (Math.abs(value) < 10_000) return text
  return text.replace(/\d{5,}/, (whole, at: number) =>
    text.includes('e') || text.slice(0, at).includes('.')
      ? whole
      : BigInt(whole).toLocaleString('en-GB').replaceAll(',', '\u00a0'),
  )
}

/** What a value is, in words a person who writes a file knows. */
export function kindOf(value: unknown): string {
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'a group of fields'
  if (typeof value === 'string') return `the text ${JSON.stringify(value.slice(0, 40))}`
  return typeof value === 'number' ? printed(value) : String(value)
}

const WANTED: Record<string, string> = {
  object: 'a group of fields',
  record: 'a group of fields',
  array: 'a list',
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
}

/** A fault in plain words, for schemas that have none of their own for it. Undefined where the library's words are taken. */
function inPlainWords(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code === 'invalid_type') {
    if (issue.input === undefined) return 'it is missing'
    const wanted = WANTED[issue.expected]
    // Text that is no number is made NaN before it is checked, as in a query.
    return wanted && `it must be ${wanted}${Number.isNaN(issue.input) ? '' : `, not ${kindOf(issue.input)}`}`
  }
  if (issue.code === 'invalid_value') return `it must be ${anyOf(issue.values.map(String))}`
  if (issue.code === 'too_big' && issue.origin === 'array')
    return `the list may have at most ${issue.maximum} entries`
  if (issue.code === 'too_small' && issue.origin === 'array')
    return `the list must have at least ${issue.minimum} ${issue.minimum === 1 ? 'entry' : 'entries'}`
  if (issue.code === 'too_big' && issue.origin === 'string')
    return `it may have at most ${issue.maximum} characters`
  if (issue.code === 'too_small' && issue.origin === 'string')
    return issue.minimum === 1 ? 'it is empty' : `it must have at least ${issue.minimum} characters`
  if (issue.code === 'too_big' && issue.origin === 'number')
    return `it must be ${issue.inclusive ? 'at most' : 'below'} ${printed(Number(issue.maximum))}`
  if (issue.code === 'too_small' && issue.origin === 'number')
    return `it must be ${issue.inclusive ? 'at least' : 'above'} ${printed(Number(issue.minimum))}`
  if (issue.code === 'unrecognized_keys')
    return `unknown ${issue.keys.length === 1 ? 'field' : 'fields'}: ${issue.keys.map((key) => JSON.stringify(key)).join(', ')}`
  return undefined
}

/** Checks a value against a schema; faults that the schema has no words for are described in plain ones. */
export const check = <Schema extends z.ZodType>(
  schema: Schema,
  value: unknown,
): z.ZodSafeParseResult<z.output<Schema>> => schema.safeParse(value, { error: inPlainWords })
