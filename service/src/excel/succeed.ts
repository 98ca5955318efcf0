import type { Ended } from './machine.js'

/** @throws Error with what a program said when it did not succeed */
export function done({ code, text }: Ended): void {
  if (code !== 0) throw new Error(text.replace(/\s+/g, ' ').trim().slice(0, 300) || `it ended with ${code}`)
}
