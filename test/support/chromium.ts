import { existsSync } from 'node:fs'

/** Chromium without its windows first: opening a page takes it half the processor time of the whole browser. */
const PLACES = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium']

/** Where Chromium is on this machine; an error that says what to install where it is not. */
export function chromiumPath(): string {
  const found = PLACES.find((place) => existsSync(place))
  if (!found) throw new Error('this needs Chromium: apt-get install chromium-headless-shell, or chromium')
  return found
}
