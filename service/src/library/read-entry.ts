import { createHash } from 'node:crypto'
import { InputError } from '@draughtbook/shared-calc'
import { NotReadable, readRegular } from '../files/read-regular.js'
import { type JsonFault, MOST_FAULTS } from '../json/json-faults.js'
import { lineFinder } from '../json/line-of.js'
import { JsonError, readJson } from '../json/read-json.js'
import { type EntryValue, type Kind, parseEntry } from './kinds.js'

/** An entry in one state. */
export interface Entry {
  readonly id: string
  readonly value: EntryValue
  /** First 16 hex digits of the SHA-256 of the file: names this state. */
  readonly version: string
}

/** Something wrong with a file of the library. */
export interface EntryFault {
  readonly file: string
  readonly line?: number
  readonly path: string
  readonly message: string
  /** Whether an earlier, good state is in use. */
  readonly lastGood: boolean
}

/** Largest file of an entry: a layout with all its fields has about 20 kB. */
export const ENTRY_BYTES = 256 * 1024

export const versionOf = (text: string | Uint8Array): string =>
  createHash('sha256').update(text).digest('hex').slice(0, 16)

/** Text of a regular file that is not unreasonably large. Throws InputError, or the system's error. */
export async function readText(path: string): Promise<string> {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await readRegular(path, ENTRY_BYTES))
  } catch (error) {
    if (error instanceof NotReadable) throw new InputError([{ path: '', message: error.message }])
    if (error instanceof TypeError)
      throw new InputError([{ path: '', message: 'the file is not text in UTF-8' }])
    throw error
  }
}

/** An entry from the text of its file. Throws InputError naming each field. */
export function entryOf(kind: Kind, id: string, text: string): Entry {
  return { id, value: parseEntry(kind, readJson(text)), version: versionOf(text) }
}

/** The faults of a file's text, the first {@link MOST_FAULTS} of them, each with the line it is on. */
export function faultsOf(error: InputError, file: string, text: string, lastGood: boolean): EntryFault[] {
  const lineOf = lineFinder(text)
  const faults: readonly JsonFault[] =
    error instanceof JsonError
      ? error.faults
      : error.problems.slice(0, MOST_FAULTS).map((one) => ({ ...one, line: lineOf(one.path) }))
  return faults
    .slice(0, MOST_FAULTS)
    .map(({ path, message, line }) => ({ file, ...(line ? { line } : {}), path, message, lastGood }))
}
