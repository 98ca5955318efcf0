const KEY = 'draughtbook.access-token'

/** The token by which the service knows this user: that of this tab, else the one kept in this browser; undefined where there is none. */
export function accessToken(): string | undefined {
  for (const place of places()) {
    const token = place?.getItem(KEY) ?? undefined
    if (token !== undefined) return token
  }
  return undefined
}

/**
 * Takes a token. Where nothing can be kept, it is asked for again.
 * @param lasting kept in this browser, also when the tab is closed; else an earlier one kept there is forgotten
 */
export function keepAccessToken(token: string, lasting: boolean): void {
  const [tab, browser] = places()
  for (const place of [tab, browser]) place?.removeItem(KEY)
  try {
    ;(lasting ? browser : tab)?.setItem(KEY, token)
  } catch {
    // No room is left: the token is asked for again.
  }
}

/** That of the tab, then that of the browser; none where there is none, or reading them is not allowed. */
function places(): (Storage | undefined)[] {
  try {
    return [globalThis.sessionStorage, globalThis.localStorage]
  } catch {
    return []
  }
}
