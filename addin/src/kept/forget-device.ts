/** How the names of everything begin that this page keeps beside its database. */
const OURS = 'draughtbook.'

/** Forgets what this page keeps in the browser beside its tests: answers about logs, the firm's name and logo, the access token. */
export function forgetDevice(places: readonly Storage[]): void {
  for (const place of places)
    for (const name of Object.keys(place)) if (name.startsWith(OURS)) place.removeItem(name)
}
