import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { HostError } from '../host/host.js'
import { labelsOf } from '../kept/kept-layouts.js'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'
import { ServiceProblem } from './service-problem.js'

const LIMIT_MS = 8000

/** Where a layout is kept in the firm's library. */
export interface KeptInLibrary {
  readonly id: string
  /** Answers for the same labels were there before. */
  readonly replaced: boolean
}

/**
 * Keeps answers about a log in the firm's library on the service that serves this page. Answers for the same labels are
 * replaced, no other entry is. Throws HostError in words.
 */
export async function keepInLibrary(base: URL, layout: LayoutInput): Promise<KeptInLibrary> {
  const service = new ServiceClient(base, { token: accessToken() })
  const signal = AbortSignal.timeout(LIMIT_MS)
  try {
    const entries = await service.library('layouts', { signal })
    const same = entries.find(({ value }) => isAnswers(value) && labelsOf(value) === labelsOf(layout))
    const taken = new Set(entries.map(({ id }) => id))
    if (same && sameAnswers(same.value, layout)) return { id: same.id, replaced: false }
    const id = same?.id ?? freeId(layout.name, taken)
    await service.save('layouts', id, layout, same?.version, { signal })
    return { id, replaced: same !== undefined }
  } catch (error) {
    throw new HostError('failed', `Not kept in the firm’s library: ${reason(error)}.`, { cause: error })
  }
}

const sameAnswers = (one: LayoutInput, other: LayoutInput): boolean => {
  const given = (layout: LayoutInput) => JSON.stringify(Object.entries(layout.answers ?? {}).toSorted())
  return given(one) === given(other)
}

/** Holds answers only; a layout that names cells is somebody's own work. */
const isAnswers = ({ answers, fields, runs = [], series = [] }: LayoutInput): boolean =>
  answers !== undefined && fields.length + runs.length + series.length === 0

/** An id the library allows (64 small letters, digits and hyphens), made of the name, with a number where it is taken. */
function freeId(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
  const start = plain.replaceAll(/^-|-$/g, '').slice(0, 58) || 'logs'
  let id = start
  for (let number = 2; taken.has(id); number += 1) id = `${start}-${number}`
  return id
}

function reason(error: unknown): string {
  if (!(error instanceof ServiceProblem)) return 'the service cannot be reached'
  if (error.status === 401) return 'the service needs an access token'
  if (error.status === 403) return 'your access token does not allow changes of the library'
  if (error.status === 412) return 'somebody else has changed this entry in the meantime; try again'
  return error.problems[0]?.message ?? error.detail ?? error.message
}
