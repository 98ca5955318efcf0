import type { RegisterRow } from './arrange.js'
import type { LineInstrument } from './test-line.js'

/** Days ahead within which an expiring calibration is listed. */
export const CALIBRATION_DAYS = 60

/** An instrument whose calibration has run out or soon will. */
export interface ExpiringCalibration {
  readonly instrument: 'pressure gauge' | 'flow device'
  /** Absent where no serial number was logged. */
  readonly serial?: string
  readonly due: string
  /** Days from the date of judgement; negative: run out. */
  readonly days: number
  /** Rows of tests made with it. */
  readonly rows: readonly number[]
}

/** Calibrations that run out within 60 days of a date, or have run out, soonest first; each instrument's latest due date counts. */
export function expiringCalibrations(rows: readonly RegisterRow[], asOf: string): ExpiringCalibration[] {
  const found = new Map<string, ExpiringCalibration>()
  for (const row of rows) {
    add(found, 'pressure gauge', row.gauge, row.row, asOf)
    add(found, 'flow device', row.device, row.row, asOf)
  }
  return [...found.values()]
    .filter(({ days }) => days <= CALIBRATION_DAYS)
    .sort((a, b) => a.days - b.days || (a.serial ?? '').localeCompare(b.serial ?? '', 'en'))
}

function add(
  found: Map<string, ExpiringCalibration>,
  instrument: ExpiringCalibration['instrument'],
  { serial, calibrationDue: due }: LineInstrument,
  row: number,
  asOf: string,
): void {
  if (due === undefined) return
  // Without a serial number nothing tells instruments apart but their due date.
  const key = `${instrument}|${serial ?? `?${due}`}`
  const known = found.get(key)
  const latest = known && known.due > due ? known.due : due
  found.set(key, {
    instrument,
    ...(serial !== undefined && { serial }),
    due: latest,
    days: daysBetween(asOf, latest),
    rows: [...(known?.rows ?? []), row],
  })
}

/** Whole days from one date to another. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000)
