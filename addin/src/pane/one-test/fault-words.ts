import type { Problem } from '@draughtbook/shared-calc'
import { HostError } from '../../host/host.js'

/** Said where the service refused a record that this device could calculate. */
export const refusal = (problems: readonly Problem[]): string =>
  `Calculated on this device; the service refused the record: ${problems.map(({ path, message }) => (path ? `${path}: ${message}` : message)).join('; ')}`

/** Words for the user; anything but a host's own refusal is a bug and is logged too. */
export function wordsOf(error: unknown): string {
  if (error instanceof HostError) return error.message
  console.error(error)
  return error instanceof Error ? error.message : String(error)
}
