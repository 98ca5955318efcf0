import type { Problem } from '@draughtbook/shared-calc'

/** Why the service refused (RFC 9457), with every field that is wrong. */
export class ServiceProblem extends Error {
  override readonly name = 'ServiceProblem'
  readonly detail: string | undefined
  readonly problems: readonly Problem[]
  /** How long to wait before asking again, s. */
  readonly retryAfter_s: number | undefined

  constructor(
    readonly status: number,
    title: string,
    more: { detail?: string; problems: readonly Problem[]; retryAfter_s?: number },
  ) {
    super(title)
    this.detail = more.detail
    this.problems = more.problems
    this.retryAfter_s = more.retryAfter_s
  }
}

/** Why the firm's library cannot be had, in words for the pane. */
export function libraryFault(error: unknown): string {
  if (!(error instanceof ServiceProblem)) return 'The service cannot be reached: enter the devices by hand.'
  if (error.status === 404) return 'The service has no library of devices.'
  return error.status === 401
    ? 'The service needs an access token.'
    : `The service answered ${error.status}: ${error.message}.`
}
