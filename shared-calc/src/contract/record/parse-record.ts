import type { z } from 'zod'
import { accepts } from '../accepts.js'
import { check } from '../check.js'
import { refuseOtherKind } from '../file-kind.js'
import { didYouMean, nearest } from '../nearest.js'
import { InputError, type Problem } from '../problem.js'
import { fieldNames } from './field-labels.js'
import { TestRecord } from './test-record.js'

/**
 * Checks unknown input against the record schema. Returns it unchanged: no defaults are filled in.
 * @param cells - field path → cell address, for input that came from a sheet
 * @throws InputError with one problem per fault, each naming its field (and cell)
 */
export function parseRecord(input: unknown, cells: Readonly<Record<string, string>> = {}): TestRecord {
  refuseOtherKind(input, 'record')
  const result = check(TestRecord, input)
  if (result.success) return result.data
  throw new InputError(problemsFromZod(result.error.issues, cells, input, fieldNames))
}

const isRecord = accepts(TestRecord)

/**
 * The same where nobody keeps the record: it is the input itself, not a copy with its fields in the order of the schema.
 * @throws InputError as {@link parseRecord} does
 */
export const acceptRecord = (input: unknown, cells: Readonly<Record<string, string>> = {}): TestRecord =>
  isRecord(input) ? (input as TestRecord) : parseRecord(input, cells)

export function problemsFromZod(
  issues: readonly z.core.$ZodIssue[],
  cells: Readonly<Record<string, string>> = {},
  input?: unknown,
  namesIn: NamesIn = () => [],
): Problem[] {
  return issues.flatMap((issue) =>
    problemsOfIssue(issue, cells, namesIn).map((problem) =>
      input !== undefined && isMissing(input, issue) ? { ...problem, missing: true as const } : problem,
    ),
  )
}

/** Whether the input has nothing where the issue was found. */
function isMissing(input: unknown, { code, path }: z.core.$ZodIssue): boolean {
  if (code === 'unrecognized_keys') return false
  let value = input
  for (const key of path) {
    if (value === null || typeof value !== 'object') return value === undefined
    value = Object.hasOwn(value, key) ? (value as Record<PropertyKey, unknown>)[key] : undefined
  }
  return value === undefined || (Array.isArray(value) && value.length === 0)
}

/** Names of the fields that a part may hold. */
type NamesIn = (part: readonly (string | number)[]) => readonly string[]

/** More unknown fields in one part are no slips of the hand: nothing is proposed for them. */
const MOST_SLIPS = 10

function problemsOfIssue(
  issue: z.core.$ZodIssue,
  cells: Readonly<Record<string, string>>,
  namesIn: NamesIn,
): Problem[] {
  if (issue.code === 'invalid_union') return [nearestBranch(issue, cells, namesIn)]
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => {
      const known = issue.keys.length > MOST_SLIPS ? [] : namesIn(issue.path as (string | number)[])
      return at([...issue.path, key], `unknown field${didYouMean(nearest(key, known, withoutUnit))}`, cells)
    })
  return [at(issue.path, issue.message, cells)]
}

/** A field by its whole name, and without its unit. */
const withoutUnit = (name: string): readonly string[] => [name, name.split('_')[0] ?? name]

/** The branch of a union that got furthest is the one the writer meant: its first fault is the useful one. */
function nearestBranch(
  issue: Extract<z.core.$ZodIssue, { code: 'invalid_union' }>,
  cells: Readonly<Record<string, string>>,
  namesIn: NamesIn,
): Problem {
  const branches = issue.errors.map((faults) => faults.length)
  const best = issue.errors[branches.indexOf(Math.min(...branches))]?.[0]
  if (!best) return at(issue.path, issue.message, cells)
  const [problem] = problemsOfIssue(
    { ...best, path: [...issue.path, ...best.path] } as z.core.$ZodIssue,
    cells,
    namesIn,
  )
  return problem ?? at(issue.path, issue.message, cells)
}

function at(path: readonly PropertyKey[], message: string, cells: Readonly<Record<string, string>>): Problem {
  const text = pathText(path)
  const cell = own(cells, text) ?? own(cells, text.replace(/\[\d+\]$/, ''))
  return cell === undefined ? { path: text, message } : { path: text, cell, message }
}

/** A field may be called `constructor`: only the map's own entries are cells. */
const own = (cells: Readonly<Record<string, string>>, path: string): string | undefined =>
  Object.hasOwn(cells, path) ? cells[path] : undefined

/** ['runs', 0, 'readings', 2, 'flow_m3_h'] → `runs[0].readings[2].flow_m3_h`. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) =>
      typeof key === 'number' ? `${text}[${key}]` : text ? `${text}.${String(key)}` : String(key),
    '',
  )
}

/** Checks unknown input against a schema. Throws InputError with one problem per fault, each naming its field. */
export function parseWith<T>(schema: z.ZodType<T>, input: unknown): T {
  const result = check(schema, input)
  if (result.success) return result.data
  throw new InputError(problemsFromZod(result.error.issues, {}, input))
}

/** Whether input says that it is a record, of whatever version. */
export const saysRecord = (input: unknown): boolean =>
  typeof input === 'object' &&
  input !== null &&
  'format' in input &&
  typeof input.format === 'string' &&
  input.format.startsWith('draughtbook/record@')
