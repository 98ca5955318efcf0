import { stat } from 'node:fs/promises'
import { readTokens, type StoredToken } from './token-file.js'

/** How long a reading of the file counts: a revoked token is out after this at the latest. */
const FRESH_MS = 1000

/** Tokens of a file that another process may change. */
export class TokenStore {
  private tokens: readonly StoredToken[] = []
  private changed = Number.NaN
  private looked = 0

  constructor(private readonly path: string) {}

  /** The tokens as the file has them now. Rejects when it cannot be read: then nobody gets in. */
  async current(): Promise<readonly StoredToken[]> {
    if (Date.now() - this.looked < FRESH_MS) return this.tokens
    const { mtimeMs } = await stat(this.path)
    if (mtimeMs !== this.changed) this.tokens = await readTokens(this.path)
    this.changed = mtimeMs
    this.looked = Date.now()
    return this.tokens
  }
}
