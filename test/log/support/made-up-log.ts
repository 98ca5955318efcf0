import type { LayoutInput } from '@draughtbook/shared-calc/log'

/** A made-up log with what must come out of it. Buildings, people, instruments and readings are invented. */
export interface MadeUpLog {
  name: string
  /** What kind of log it imitates, in general terms. */
  imitates: string
  fileName: string
  write(): Promise<Uint8Array>
  layout: LayoutInput
  records: readonly object[]
  /** Findings of the first test: rule with the cells it names. */
  findings: readonly (readonly [rule: string, ...cells: string[]])[]
  /** Whether the log's own wording suffices to propose a layout that gives the same records. */
  proposable?: boolean
}

/** Readings as pairs of pressure and flow. */
export function pairs(...values: readonly [pressure_Pa: number, flow_m3_h: number][]) {
  return values.map(([pressure_Pa, flow_m3_h]) => ({ pressure_Pa, flow_m3_h }))
}
