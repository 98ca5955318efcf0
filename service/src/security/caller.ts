/** Who makes a request. */
export interface Caller {
  /** Name for the audit line: a token's, an identity's, or "this machine". */
  readonly name: string
  /** Key for rate limits. */
  readonly key: string
  /** May change the firm's library. */
  readonly library: boolean
}

export const thisMachine: Caller = { name: 'this machine', key: 'this machine', library: true }
