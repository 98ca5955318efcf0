import { readFile } from 'node:fs/promises'
import type { Writable } from 'node:stream'
import { InputError, type Problem, visible } from '@draughtbook/shared-calc'
import { builtInLayouts, type Layout, LIMITS, parseLayout } from '@draughtbook/shared-calc/log'
import type { Request, Response } from 'express'
import multer from 'multer'
import { fileFault, isDiskFull } from '../files/file-fault.js'
import { goneSignal, onceOver } from '../http/gone.js'
import { clientGone, HttpFault } from '../http/http-fault.js'
import { myTurn } from '../http/in-turn.js'
import { refuseCompressed } from '../http/read-body.js'
import type { Jobs } from '../jobs/jobs.js'
import { JsonError } from '../json/read-json.js'
import { publicKeyOf } from '../signature/keys.js'
import type { FileOrder } from './archive-tasks.js'
import { takeInPortions } from './in-portions.js'
import { patiently } from './job-runner.js'
import { removeUpload, uploadFolder } from './upload-folders.js'
import { storageIn, type UploadStorage } from './upload-storage.js'

/** Most workbooks of one request. A whole country's archive goes over the command line and a queue. */
export const MOST_FILES = 2000
const MOST_LAYOUTS = 20
/** Largest body: a year of a busy firm. What comes is kept on disk until it is answered. */
const TOTAL_BYTES = 1024 * 1024 * 1024

/**
 * Takes the workbooks of a multipart body (`files`, with `layouts` and `keys` beside them) into a folder of their own,
 * which is removed once the answer is sent. None of it is kept in memory.
 */
export async function takeUpload(request: Request, response: Response, jobs: Jobs): Promise<FileOrder[]> {
  refuseCompressed(request)
  if (Number(request.headers['content-length']) > TOTAL_BYTES) throw tooLarge()
  const folder = await uploadFolder().catch(storageFault)
  const storage = storageIn(folder)
  onceOver(response, () => void storage.closed().then(() => removeUpload(folder)))
  // The folders of hundreds that come together are made at the same moment.
  await myTurn()
  if (response.destroyed) throw clientGone()
  await receive(request, response, storage)
  const files = request.files as { [field: string]: Express.Multer.File[] } | undefined
  const layouts = await eachInTurn(files?.layouts, LAYOUT_BYTES, (file) => layoutOf(file, response, jobs))
  const keys = await eachInTurn(files?.keys, KEY_BYTES, keyOf)
  const workbooks = files?.files ?? []
  if (workbooks.length === 0)
    throw new HttpFault(422, 'There is nothing to read', {
      kind: 'unusable-input',
      errors: [{ path: 'files', message: 'send at least one workbook in the part files' }],
    })
  return workbooks.map(({ path, originalname }) => ({
    path,
    file: nameOf(originalname),
    layouts: layouts.length > 0 ? layouts : builtInLayouts,
    keys,
  }))
}

function receive(request: Request, response: Response, storage: UploadStorage): Promise<void> {
  if (!request.is('multipart/form-data'))
    throw new HttpFault(415, 'The body must be multipart/form-data', { kind: 'wrong-type' })
  const upload = multer(optionsFor(storage)).fields(
    Object.entries(MOST_OF).map(([name, maxCount]) => ({ name, maxCount })),
  )
  return new Promise((resolve, reject) => {
    let taken = 0
    request.on('data', (chunk: Buffer) => {
      taken += chunk.length
      if (taken <= TOTAL_BYTES) return
      request.unpipe()
      reject(tooLarge())
    })
    upload(request, response, (error: unknown) => (error ? reject(uploadFault(error)) : resolve()))
  })
}

/** For the package; its published types do not have `streamHandler` yet. */
const optionsFor = (storage: UploadStorage): multer.Options & StreamHandler => ({
  storage,
  defParamCharset: 'utf8',
  // A folder's files keep their folders: two sites may both have a "1.xlsx".
  preservePath: true,
  streamHandler: (body, reader) => {
    takeInPortions(reader)
    body.pipe(reader)
  },
  limits: {
    fileSize: LIMITS.fileBytes,
    files: MOST_FILES + 2 * MOST_LAYOUTS,
    fields: 0,
    parts: MOST_FILES + 50,
  },
})

interface StreamHandler {
  /** Hands a body to its reader. */
  readonly streamHandler: (body: Request, reader: Writable) => void
}

/** Parts of the body that hold files, with the most of each. */
const MOST_OF: Readonly<Record<string, number>> = {
  files: MOST_FILES,
  layouts: MOST_LAYOUTS,
  keys: MOST_LAYOUTS,
}

const tooLarge = () =>
  new HttpFault(413, 'The body is too large', {
    kind: 'too-large',
    detail: `at most ${MOST_FILES} files of ${LIMITS.fileBytes / 1024 / 1024} MB each, ${TOTAL_BYTES / 1024 / 1024} MB together`,
  })

function uploadFault(error: unknown): unknown {
  if (error instanceof multer.MulterError) {
    const large =
      error.code === 'LIMIT_FILE_SIZE' ||
      error.code === 'LIMIT_FILE_COUNT' ||
      error.code === 'LIMIT_PART_COUNT'
    return large ? tooLarge() : unusable(error.field ?? '', unexpectedWords(error.field))
  }
  // What busboy says about a body that is cut short or badly formed.
  if (error instanceof Error && !('syscall' in error))
    return new HttpFault(400, 'The body cannot be read', { detail: error.message })
  return asStorageFault(error)
}

/** In place of the library's own words. It calls a part with too many files unexpected too. */
function unexpectedWords(part = ''): string {
  return Object.hasOwn(MOST_OF, part)
    ? `at most ${MOST_OF[part]} files are taken in this part`
    : 'send only files, in the parts files, layouts and keys; settings such as month belong in the query'
}

const storageFault = (error: unknown): never => {
  throw asStorageFault(error)
}

/** The disk for uploads cannot take the files: what the caller can do about it, and what it is. */
function asStorageFault(error: unknown): unknown {
  const fault = fileFault(error)
  if (fault === undefined) return error
  return new HttpFault(isDiskFull(error) ? 507 : 503, 'The uploaded files cannot be stored', {
    kind: 'upload-storage',
    detail: `the folder for uploads (TMPDIR) cannot be written: ${fault}`,
  })
}

/** The name as in the sender's folder, without "..". */
const nameOf = (name: string): string =>
  name
    .replaceAll('\\', '/')
    .split('/')
    .filter((part) => part !== '' && part !== '.' && part !== '..')
    .join('/')
    .slice(0, 400)
    // The name was cut in the middle of a character, or sent that way.
    .replace(/\p{Surrogate}/gu, '\ufffd') || 'workbook'

/** The same in a message: characters that nobody sees are shown. */
const shownName = (name: string): string => visible(nameOf(name))

/** Largest layout and key: ordinary ones have a few kB. */
const LAYOUT_BYTES = 64 * 1024
const KEY_BYTES = 16 * 1024

/** Contents of the small files next to the workbooks; the event loop gets a turn between two of them. */
async function eachInTurn<T>(
  files: readonly Express.Multer.File[] = [],
  most: number,
  read: (file: Express.Multer.File) => Promise<T>,
): Promise<T[]> {
  const held: T[] = []
  for (const file of files) {
    const { size, fieldname, originalname } = file
    if (size > most)
      throw unusable(
        fieldname,
        `${shownName(originalname)} has ${Math.ceil(size / 1024)} kB; at most ${most / 1024} kB are read`,
      )
    held.push(await read(file))
  }
  return held
}

const unusable = (path: string, message: string) =>
  new HttpFault(422, 'The input cannot be used', { kind: 'unusable-input', errors: [{ path, message }] })

/** Checked by a worker first: what is wrong with a layout can take longer to find than the event loop may be held. */
async function layoutOf(
  { path, originalname }: Express.Multer.File,
  response: Response,
  jobs: Jobs,
): Promise<Layout> {
  const body = await readFile(path)
  try {
    const { value } = await patiently(jobs, 'libraryEntry', { body, kind: 'layouts' }, goneSignal(response))
    return parseLayout(value)
  } catch (error) {
    // Several layouts may come together: each problem names its file. What is no JSON is answered with another status.
    const named = <Kind extends Problem>(problem: Kind): Kind => ({
      ...problem,
      message: `${shownName(originalname)}: ${problem.message}`,
    })
    if (error instanceof JsonError) throw new JsonError(error.faults.map(named))
    if (error instanceof InputError) throw new InputError(error.problems.map(named))
    throw error
  }
}

async function keyOf({ path, originalname }: Express.Multer.File): Promise<string> {
  const pem = await readFile(path, 'utf8')
  try {
    publicKeyOf(pem)
  } catch (error) {
    throw unusable('keys', `${shownName(originalname)}: ${error instanceof Error ? error.message : ''}`)
  }
  return pem
}
