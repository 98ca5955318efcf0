import { readFile, stat } from 'node:fs/promises'
import { basename, extname } from 'node:path'
import {
  type CellMap,
  type Finding,
  InputError,
  parseRecord,
  type TestRecord,
} from '@draughtbook/shared-calc'
import { openLog, readLog, testsOf } from '@draughtbook/shared-calc/log'
import { parseRecordRows } from '@draughtbook/shared-calc/workbook'
import { readJson } from '../json/read-json.js'
import { layoutsFor, readLayout } from '../library/layouts.js'
import { summaryRows } from '../library/summary-rows.js'
import { withFile } from './file-error.js'

/** One test as read: its record, where its fields stood, and what reading it had to convert or leave out. */
export interface ReadTest {
  readonly record: TestRecord
  readonly cells: CellMap
  readonly findings: readonly Finding[]
}

export interface ReadOptions {
  /** Path of a layout file. */
  readonly layout?: string | undefined
  /** Whether a layout found by guessing may be used. */
  readonly acceptProposal?: boolean | undefined
}

/** Largest file taken: as the log reader's own limit. */
const LARGEST = 32 * 1024 * 1024

/** Reads a record (.json), one of our own workbooks or a test log. Throws FileError with every fault. */
export function readInput(path: string, options: ReadOptions = {}): Promise<ReadTest[]> {
  return withFile(path, async () => {
    const bytes = await readBytes(path)
    if (extname(path).toLowerCase() === '.json') return [recordOf(bytes)]
    return readSheet(bytes, path, options)
  })
}

async function readBytes(path: string): Promise<Uint8Array> {
  const { size } = await stat(path)
  if (size > LARGEST)
    throw new InputError([{ path: '', message: `the file is larger than ${LARGEST / 1024 / 1024} MB` }])
  return readFile(path)
}

function recordOf(bytes: Uint8Array): ReadTest {
  return { record: parseRecord(readJson(utf8(bytes))), cells: {}, findings: [] }
}

/** UTF-8, with or without byte order mark. */
export function utf8(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new InputError([{ path: '', message: 'the file is not text in UTF-8' }])
  }
}

/** One of our own workbooks holds its record; any other is a test log. */
async function readSheet(
  bytes: Uint8Array,
  path: string,
  { layout: layoutPath, acceptProposal = false }: ReadOptions,
): Promise<ReadTest[]> {
  const name = basename(path)
  const layout = layoutPath === undefined ? undefined : await readLayout(layoutPath)
  const rows = summaryRows(openLog(bytes, name, layout?.decimal))
  if (rows) return [{ record: parseRecordRows(rows).record, cells: {}, findings: [] }]
  const layouts = layout ? [] : await layoutsFor(path)
  return testsOf(readLog(bytes, name, { ...(layout ? { layout } : {}), layouts, acceptProposal }))
}
