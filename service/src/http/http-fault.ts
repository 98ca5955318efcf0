import type { Problem } from '@draughtbook/shared-calc'

export interface FaultDetails {
  /** One sentence on this occurrence. */
  readonly detail?: string
  readonly errors?: readonly Problem[]
  readonly headers?: Readonly<Record<string, string>>
  /** Anchor of the problem's description on the API page; left out for problems that say no more than the status. */
  readonly kind?: string
}

/** A request that is answered with a problem. */
export class HttpFault extends Error {
  override readonly name = 'HttpFault'
  constructor(
    readonly status: number,
    readonly title: string,
    readonly details: FaultDetails = {},
  ) {
    super(title)
  }
}

/** Too much to do at the moment. */
export const overloaded = () =>
  new HttpFault(503, 'The service is busy', {
    kind: 'busy',
    detail: 'too many requests are waiting; try again in a few seconds',
    headers: { 'retry-after': '2' },
  })

/** There is no client left to answer; 499 is for the audit line. */
export const clientGone = () => new HttpFault(499, 'The client has disconnected')
