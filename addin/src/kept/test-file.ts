import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { plainName } from '../host/download.js'
import { HostError } from '../host/host.js'
import { parseEntries } from '../pane/one-test/entries.js'
import { type CellEdit, type KeptTest, newTest, type StepId } from './kept-test.js'

const FORMAT = 'draughtbook/test@2'
/** Saved before logs and photos were kept: the entries alone. */
const ENTRIES_ONLY = 'draughtbook/test@1'
/** More than any test holds: a file beyond it is refused before it is unpacked. */
const MOST_FILES = 2100
const MOST_BYTES = 500e6

type Photos = Readonly<Record<string, Uint8Array>>

interface Contents {
  test: KeptTest
  log?: Uint8Array
  photos: Photos
}

/**
 * One test as one file: a zip with `test.json` (everything typed and picked), the record where it is whole, the log as it
 * was opened, and the photos.
 */
export function packTest(
  { entries, about, log, edits }: KeptTest,
  logBytes: Uint8Array | undefined,
  photos: Photos,
): { bytes: Uint8Array; name: string } {
  const { draft, whole, ...listed } = about
  const json = (value: unknown): Uint8Array => strToU8(`${JSON.stringify(value, null, 1)}\n`)
  const files: Record<string, Uint8Array> = {
    'test.json': json({ format: FORMAT, entries: JSON.parse(entries), about: listed, log, edits }),
    ...(whole && draft && { 'record.json': json(draft) }),
    ...(log && logBytes && { [`log/${log.name}`]: logBytes }),
    ...Object.fromEntries(Object.entries(photos).map(([name, bytes]) => [`photos/${name}`, bytes])),
  }
  return {
    // Photos and workbooks are compressed already.
    bytes: zipSync(
      Object.fromEntries(
        Object.entries(files).map(([name, bytes]) => [
          name,
          [bytes, { level: name.endsWith('.json') ? 6 : 0 }],
        ]),
      ),
    ),
    name: `${plainName(about.name || log?.name || 'test')}${about.date ? `-${plainName(about.date)}` : ''}-test.zip`,
  }
}

/** Reads a file of {@link packTest}. Throws HostError, with words for the user, where it is none. */
export function unpackTest(bytes: Uint8Array, fileName: string): Contents {
  const files = /\.json$/i.test(fileName) ? { 'test.json': bytes } : unzip(bytes, fileName)
  const { format, entries, about, log, edits } = jsonIn(files['test.json'], fileName)
  if (format !== FORMAT && format !== ENTRIES_ONLY)
    throw noTest(fileName, 'it was not made with "Save as a file"')
  const text = JSON.stringify(entries)
  if (!parseEntries(text))
    throw new HostError('failed', `${fileName} is damaged: its entries cannot be read.`)
  const photos = Object.fromEntries(
    Object.entries(files).flatMap(([path, content]) =>
      path.startsWith('photos/') ? [[path.slice('photos/'.length), content] as const] : [],
    ),
  )
  const logBytes = isLog(log) ? files[`log/${log.name}`] : undefined
  const test: KeptTest = {
    ...newTest(text),
    about: isAbout(about) ? about : { name: '', standing: '' },
    edits: Array.isArray(edits) ? edits.filter(isEdit) : [],
    photos: Object.entries(photos).map(([name, { length: size }]) => ({ name, size })),
    ...(isLog(log) && { log: { ...log, size: logBytes?.length ?? 0 } }),
  }
  return { test, photos, ...(logBytes && { log: logBytes }) }
}

function unzip(bytes: Uint8Array, fileName: string): Record<string, Uint8Array> {
  let [count, size] = [0, 0]
  const within = ({ name, originalSize }: { name: string; originalSize: number }): boolean => {
    count += 1
    size += originalSize
    if (count > MOST_FILES || size > MOST_BYTES)
      throw new HostError('too-large', `${fileName} is too large to be a saved test.`)
    return /^(test\.json|log\/[^/\\]+|photos\/[^/\\]+)$/.test(name)
  }
  try {
    return unzipSync(bytes, { filter: within })
  } catch (cause) {
    if (cause instanceof HostError) throw cause
    throw noTest(fileName, 'it is not a zip file, or it is cut off', cause)
  }
}

function jsonIn(bytes: Uint8Array | undefined, fileName: string): Record<string, unknown> {
  if (!bytes) throw noTest(fileName, 'it has no test.json')
  try {
    return (JSON.parse(strFromU8(bytes)) ?? {}) as Record<string, unknown>
  } catch (cause) {
    throw noTest(fileName, 'it is not JSON', cause)
  }
}

const noTest = (fileName: string, why: string, cause?: unknown): HostError =>
  new HostError('failed', `${fileName} is not a test saved here: ${why}.`, { cause })

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const STEPS: readonly string[] = ['before', 'site', 'result'] satisfies StepId[]

const isAbout = (value: unknown): value is KeptTest['about'] =>
  isObject(value) &&
  typeof value.name === 'string' &&
  typeof value.standing === 'string' &&
  (value.date === undefined || typeof value.date === 'string') &&
  (value.step === undefined || STEPS.includes(String(value.step)))

const isLog = (value: unknown): value is NonNullable<KeptTest['log']> =>
  isObject(value) &&
  typeof value.name === 'string' &&
  (value.date === undefined || typeof value.date === 'string')

const isEdit = (value: unknown): value is CellEdit =>
  isObject(value) &&
  typeof value.sheet === 'string' &&
  typeof value.text === 'string' &&
  [value.row, value.column].every((at) => Number.isInteger(at) && Number(at) > 0)
