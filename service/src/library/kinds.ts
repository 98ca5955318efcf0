import {
  check,
  InputError,
  LibraryDevice,
  LibraryGauge,
  LibraryTarget,
  problemsFromZod,
} from '@draughtbook/shared-calc'
import { Layout } from '@draughtbook/shared-calc/log'
import type { z } from 'zod'

/** What the library holds, each kind in a folder of its name. */
export const KINDS = {
  devices: LibraryDevice,
  gauges: LibraryGauge,
  layouts: Layout,
  targets: LibraryTarget,
} as const

export type Kind = keyof typeof KINDS
export type EntryValue = z.infer<(typeof KINDS)[Kind]>

export const kindNames = Object.keys(KINDS) as readonly Kind[]
export const isKind = (text: unknown): text is Kind => typeof text === 'string' && Object.hasOwn(KINDS, text)

/** Checks the content of an entry. Throws InputError naming each field. */
export function parseEntry(kind: Kind, input: unknown): EntryValue {
  const result = check<z.ZodType<EntryValue>>(KINDS[kind], input)
  if (result.success) return result.data
  throw new InputError(problemsFromZod(result.error.issues))
}

/** Names that are files of their own on every system, and nothing else: no dot, no slash, no device name. */
export const isEntryId = (text: unknown): text is string =>
  typeof text === 'string' &&
  /^[a-z0-9][a-z0-9-]{0,63}$/.test(text) &&
  !/^(con|prn|aux|nul|com\d|lpt\d)$/.test(text)
