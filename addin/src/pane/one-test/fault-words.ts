import type { Evaluation, Problem } from '@draughtbook/shared-calc'
import { HostError } from '../../host/host.js'
import { isMissingPart, MISSING_PART } from '../missing-part.js'

/** Said where the service refused a record that this device could calculate. */
export const refusal = (problems: readonly Problem[]): string =>
  `Calculated on this device; the service refused the record: ${problems.map(({ path, message }) => (path ? `${path}: ${message}` : message)).join('; ')}`

/** Words for the user; anything but a host's own refusal is a bug and is logged too. */
export function wordsOf(error: unknown): string {
  if (error instanceof HostError) return error.message
  if (isMissingPart(error)) return MISSING_PART
  console.error(error)
  return error instanceof Error ? error.message : String(error)
}

/** Relative difference below which two figures are the same computation on two machines. */
const SAME = 1e-9

/** How the service's figures differ from the pane's own; undefined when they agree. */
export function differenceOf(service: Evaluation, own: Evaluation): string | undefined {
  if (service.recordDigest !== own.recordDigest) return undefined
  const here = own.results.q50.value
  const there = service.results.q50.value
  if (Math.abs(there - here) <= SAME * Math.abs(here) && service.verdict.outcome === own.verdict.outcome)
    return undefined
  return `The service (calculation ${service.calculationVersion}) and this pane (${own.calculationVersion}) differ: q50 ${there} and ${here} m³/h. The service’s figures are shown.`
}
