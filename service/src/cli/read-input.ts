import { stat } from 'node:fs/promises'
import { basename, extname } from 'node:path'
import { dayOf, InputError, parseRecord } from '@draughtbook/shared-calc'
import { type Answers, LIMITS, testWithAnswers } from '@draughtbook/shared-calc/log'
import { NotReadable, readRegular } from '../files/read-regular.js'
import type { ReadTest } from '../input/read-sheet.js'
import { readSheet } from '../input/read-sheet.js'
import { readJson } from '../json/read-json.js'
import { layoutsFor, parseLayoutFile } from '../library/layouts.js'
import { withFile } from './errors.js'

export interface ReadOptions {
  /** Path of a layout file. */
  readonly layout?: string | undefined
  /** Answers to what a log leaves open, by path. */
  readonly answers?: Answers | undefined
}

/** Reads a record (.json), one of our own workbooks or a test log. Throws FileError with every fault. */
export async function readInput(path: string, options: ReadOptions = {}): Promise<ReadTest[]> {
  return withFile(path, async () => {
    const bytes = await readBytes(path)
    if (extname(path).toLowerCase() === '.json' && options.layout !== undefined)
      throw new InputError([{ path: '', message: 'a record is read without a layout: omit --layout' }])
    if (extname(path).toLowerCase() === '.json')
      return [
        testWithAnswers(
          { record: parseRecord(readJson(utf8(bytes))), cells: {}, findings: [] },
          options.answers,
        ),
      ]
    const layout = await layoutOf(options)
    const layouts = layout ? [] : await layoutsFor(path)
    const fileDate = await lastChanged(path)
    return readSheet(bytes, basename(path), { layout, layouts, answers: options.answers, fileDate })
  })
}

/** The layout that was named; its faults are told under its own name. */
const layoutOf = async ({ layout }: ReadOptions) =>
  layout === undefined
    ? undefined
    : withFile(layout, async () => {
        try {
          return await parseLayoutFile(layout)
        } catch (error) {
          throw error instanceof NotReadable ? new InputError([{ path: '', message: error.message }]) : error
        }
      })

/** Day a file was last changed, YYYY-MM-DD, by the clock of this machine. */
export const lastChanged = async (path: string): Promise<string> => dayOf((await stat(path)).mtime)

/** The bytes of a file, unless it is larger than any that is read, or no file at all. Throws InputError, or the system's error. */
export async function readBytes(path: string): Promise<Uint8Array> {
  try {
    return await readRegular(path, LIMITS.fileBytes)
  } catch (error) {
    if (error instanceof NotReadable) throw new InputError([{ path: '', message: error.message }])
    throw error
  }
}

/** UTF-8, with or without byte order mark. */
function utf8(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new InputError([{ path: '', message: 'the file is not text in UTF-8' }])
  }
}

/** Reads a JSON file and checks it. Throws FileError with every fault, each naming its field. */
export function readJsonFile<T>(path: string, parse: (input: unknown) => T): Promise<T> {
  return withFile(path, async () => {
    if (extname(path).toLowerCase() !== '.json')
      throw new InputError([
        {
          path: '',
          message: 'only a .json file can be read here; evaluate and check read test logs',
        },
      ])
    return parse(readJson(new TextDecoder('utf-8', { fatal: true }).decode(await readBytes(path))))
  })
}
