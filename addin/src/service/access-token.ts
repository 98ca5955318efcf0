const KEY = 'draughtbook.access-token'

/** The token by which the service knows this user, kept in this browser only; undefined where there is none. */
export function accessToken(): string | undefined {
  try {
    return globalThis.localStorage.getItem(KEY) ?? undefined
  } catch {
    // No storage, or none allowed: then there is no token.
    return undefined
  }
}

/** Keeps a token; an empty one is forgotten. Where nothing can be kept, the token is asked for again. */
export function keepAccessToken(token: string): void {
  try {
    if (token === '') globalThis.localStorage.removeItem(KEY)
    else globalThis.localStorage.setItem(KEY, token)
  } catch {
    // As above.
  }
}
