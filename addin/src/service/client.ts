import type { Evaluation, Problem, TestRecord } from '@draughtbook/shared-calc'

/** What the service said, or why it said nothing. */
export type ServiceAnswer =
  | { kind: 'evaluation'; evaluation: Evaluation }
  | { kind: 'refused'; problems: Problem[] }
  | { kind: 'unreachable'; why: string }

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
  const address = new URL(`v1/evaluations${trace ? '?trace=1' : ''}`, base)
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(record),
      signal: AbortSignal.any([signal, AbortSignal.timeout(LIMIT_MS)]),
    })
    if (response.ok) return { kind: 'evaluation', evaluation: (await response.json()) as Evaluation }
    if (response.status === 422) return { kind: 'refused', problems: await problemsOf(response) }
    return { kind: 'unreachable', why: `the service answered ${response.status}` }
  } catch (error) {
    if (signal.aborted) throw error
    const timedOut = error instanceof DOMException && error.name === 'TimeoutError'
    return {
      kind: 'unreachable',
      why: timedOut ? 'the service did not answer in time' : 'the service cannot be reached',
    }
  }
}

async function problemsOf(response: Response): Promise<Problem[]> {
  const body = (await response.json()) as { errors?: Problem[]; detail?: string }
  return body.errors ?? [{ path: '', message: body.detail ?? 'the service refused the record' }]
}
