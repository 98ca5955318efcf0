import type { Evaluation, Problem, TestRecord } from '@draughtbook/shared-calc'
import { accessToken } from './access-token.js'
import { ServiceClient } from './service-client.js'
import { ServiceProblem } from './service-problem.js'

/** What the service said, or why it said nothing. */
export type ServiceAnswer =
  | { kind: 'evaluation'; evaluation: Evaluation }
  | { kind: 'refused'; problems: readonly Problem[] }
  /** `access`: the service wants to know who asks. */
  | { kind: 'unreachable'; why: string; access?: boolean }

/** Longer than a slow mobile connection takes, shorter than patience lasts. The local result stands meanwhile. */
const LIMIT_MS = 8000

/**
 * Asks the service that serves this page; never any other address.
 * @param base address of the pane's own folder
 */
export async function askService(
  record: TestRecord,
  trace: boolean,
  base: URL,
  signal: AbortSignal,
): Promise<ServiceAnswer> {
  const limited = AbortSignal.any([signal, AbortSignal.timeout(LIMIT_MS)])
  try {
    const evaluation = await new ServiceClient(base, { token: accessToken() }).evaluate(record, {
      trace,
      signal: limited,
    })
    // A proxy or a sign-in page in between may answer in the service's place.
    if (typeof evaluation?.recordDigest !== 'string')
      return { kind: 'unreachable', why: 'what answered is not the service' }
    return { kind: 'evaluation', evaluation }
  } catch (error) {
    if (signal.aborted) throw error
    if (error instanceof ServiceProblem) return refusal(error)
    const timedOut = error instanceof DOMException && error.name === 'TimeoutError'
    return {
      kind: 'unreachable',
      why: timedOut ? 'the service did not answer in time' : 'the service cannot be reached',
    }
  }
}

function refusal({ status, problems, detail, message }: ServiceProblem): ServiceAnswer {
  if (status === 401) return { kind: 'unreachable', why: 'the service needs an access token', access: true }
  if (status !== 422) return { kind: 'unreachable', why: `the service answered ${status}` }
  return {
    kind: 'refused',
    problems: problems.length > 0 ? problems : [{ path: '', message: detail ?? message }],
  }
}
