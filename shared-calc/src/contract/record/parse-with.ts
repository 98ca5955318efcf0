import type { z } from 'zod'
import { InputError } from '../problem.js'
import { problemsFromZod } from './parse-record.js'

/** Checks unknown input against a schema. Throws InputError with one problem per fault, each naming its field. */
export function parseWith<T>(schema: z.ZodType<T>, input: unknown): T {
  const result = schema.safeParse(input)
  if (result.success) return result.data
  throw new InputError(problemsFromZod(result.error.issues))
}

/** Whether input says that it is a record, of whatever version. */
export const saysRecord = (input: unknown): boolean =>
  typeof input === 'object' &&
  input !== null &&
  'format' in input &&
  typeof input.format === 'string' &&
  input.format.startsWith('draughtbook/record@')
