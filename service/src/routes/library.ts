import { type Request, type RequestHandler, type Response, Router } from 'express'
import { fileFault, isDiskFull } from '../files/file-fault.js'
import { etagOf, expectedVersion, hasVersion } from '../http/etag.js'
import { HttpFault } from '../http/http-fault.js'
import { bytesOf, jsonBytes } from '../http/read-body.js'
import { serve } from '../http/route.js'
import { doWork, type Jobs } from '../jobs/jobs.js'
import { isEntryId, isKind, type Kind, kindNames } from '../library/kinds.js'
import { type Library, Outdated } from '../library/library.js'
import { ENTRY_BYTES } from '../library/read-entry.js'
import { Locked } from '../library/with-lock.js'
import { mayUse } from '../security/caller.js'

/** /v1/library: the firm's devices, gauges, layouts and targets. */
export function libraryRoutes(library: Library | undefined, jobs: Jobs, timeout_s: number): Router {
  const router = Router()
  if (!library) {
    router.use('/library', () => {
      throw new HttpFault(404, 'No library is set up', { detail: 'start the service with --library FOLDER' })
    })
    return router
  }
  serve(router, '/library', { get: summary(library) })
  serve(router, '/library/:kind', { get: listing(library) })
  serve(router, '/library/:kind/:id', {
    get: reading(library),
    put: [mayUse('library'), ...jsonBytes(ENTRY_BYTES), saving(library, jobs, timeout_s)],
    delete: [mayUse('library'), removing(library)],
  })
  serve(router, '/library/:kind/:id/history', {
    get: history(library),
    delete: [mayUse('library'), forgetting(library)],
  })
  serve(router, '/library/:kind/:id/history/:version', { get: keptState(library) })
  return router
}

const summary =
  (library: Library): RequestHandler =>
  async (_request, response) => {
    const lists = await Promise.all(kindNames.map((kind) => library.list(kind)))
    response.json({
      kinds: Object.fromEntries(kindNames.map((kind, i) => [kind, lists[i]?.entries.length ?? 0])),
      faults: lists.flatMap(({ faults }) => faults),
    })
  }

const listing =
  (library: Library): RequestHandler =>
  async (request, response) => {
    response.json(await library.list(kindOf(request)))
  }

const reading =
  (library: Library): RequestHandler =>
  async (request, response) => {
    const { kind, id } = entryOf(request, response)
    const entry = await library.get(kind, id)
    if (!entry) throw noEntry(kind, id)
    response.set({ etag: etagOf(entry.version), 'cache-control': 'no-cache' })
    if (hasVersion(request, entry.version)) return void response.status(304).end()
    response.json(entry.value)
  }

const saving =
  (library: Library, jobs: Jobs, timeout_s: number): RequestHandler =>
  async (request, response) => {
    const { kind, id } = entryOf(request, response)
    const expected = expectedVersion(request)
    const body = bytesOf(request)
    const { value } = await doWork({ jobs, timeout_s, response }, 'libraryEntry', { body, kind })
    const version = await library.put(kind, id, value, expected).catch(storageFault)
    response
      .status(expected === undefined ? 201 : 200)
      .set('etag', etagOf(version))
      .json({ id, version })
  }

const removing =
  (library: Library): RequestHandler =>
  async (request, response) => {
    const { kind, id } = entryOf(request, response)
    const expected = expectedVersion(request)
    if (expected === undefined) throw noEntry(kind, id)
    await library.remove(kind, id, expected).catch(storageFault)
    response.status(204).end()
  }

const history =
  (library: Library): RequestHandler =>
  async (request, response) => {
    const { kind, id } = entryOf(request, response)
    response.json({ versions: await library.kept(kind, id).catch(storageFault) })
  }

const forgetting =
  (library: Library): RequestHandler =>
  async (request, response) => {
    const { kind, id } = entryOf(request, response)
    await library.forget(kind, id).catch(storageFault)
    response.status(204).end()
  }

const keptState =
  (library: Library): RequestHandler =>
  async (request, response) => {
    const { kind, id } = entryOf(request, response)
    const { version } = request.params
    const known = typeof version === 'string' && /^[0-9a-f]{16}$/.test(version)
    const text = known ? await library.keptText(kind, id, version).catch(storageFault) : undefined
    if (text === undefined) throw new HttpFault(404, 'The entry has no such version')
    response.type('json').send(text)
  }

function kindOf({ params }: Request): Kind {
  if (isKind(params.kind)) return params.kind
  throw new HttpFault(404, 'The library has no such kind of entry', {
    detail: `the kinds are ${kindNames.join(', ')}`,
  })
}

/** Kind and id from the address. Nothing else ever becomes a part of a path. */
function entryOf(request: Request, response: Response): { kind: Kind; id: string } {
  const kind = kindOf(request)
  const { id } = request.params
  if (!isEntryId(id))
    throw new HttpFault(404, 'There is no such entry', {
      detail: 'names of entries have up to 64 lower-case letters, digits and hyphens',
    })
  response.locals.entry = `${kind}/${id}`
  return { kind, id }
}

const noEntry = (kind: Kind, id: string) => new HttpFault(404, `There is no entry ${kind}/${id}`)

/** What keeps a change of the library from being saved, as an answer. Nothing was changed. */
function storageFault(error: unknown): never {
  if (error instanceof Outdated)
    throw new HttpFault(412, 'Someone else has changed the entry since you read it', {
      kind: 'precondition',
      detail: 'read it again, check the change, and send yours with the new ETag',
    })
  if (error instanceof Locked)
    throw new HttpFault(503, 'The entry is being changed by another process', {
      kind: 'busy',
      headers: { 'retry-after': '2' },
    })
  const fault = fileFault(error)
  if (!fault) throw error
  throw new HttpFault(isDiskFull(error) ? 507 : 503, 'The library cannot be written', {
    kind: 'library-storage',
    detail: `nothing was changed: ${fault}`,
  })
}
