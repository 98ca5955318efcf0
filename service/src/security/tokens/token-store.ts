import { stat } from 'node:fs/promises'
import { readTokens, type StoredToken } from './token-file.js'

/** How long a reading of the file counts: a revoked token is out after this at the latest. */
const FRESH_MS = 1000

/** Tokens of a file that another process may change. */
export class TokenStore {
  private tokens: readonly StoredToken[] = []
  private mark = ''
  private looked = Number.NEGATIVE_INFINITY

  constructor(private readonly path: string) {}

  /** The tokens as the file has them now. Rejects when it cannot be read: then nobody gets in. */
  async current(): Promise<readonly StoredToken[]> {
    // Not by the time of day: if the clock were put back, a revoked token would stay valid.
    const now = performance.now()
    if (now - this.looked < FRESH_MS) return this.tokens
    const { mtimeNs, size, ino } = await stat(this.path, { bigint: true })
    const mark = `${mtimeNs} ${size} ${ino}`
    if (mark !== this.mark) this.tokens = await readTokens(this.path)
    this.mark = mark
    this.looked = now
    return this.tokens
  }
}
