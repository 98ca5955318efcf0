import { fileFault, isDiskFull } from '../files/file-fault.js'
import { HttpFault } from '../http/http-fault.js'
import { Outdated } from '../library/library.js'
import { Locked } from '../library/with-lock.js'

/** What keeps a change of the library from being saved, as an answer. Nothing was changed. */
export function storageFault(error: unknown): never {
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
