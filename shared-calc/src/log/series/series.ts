import { blockText, withSheet } from '../grid/address.js'
import type { Average } from './average.js'

/** A gauge's time log: columns of one length, times rising. */
export interface Series {
  /** s, from any start. */
  time_s: Float64Array
  /** Across the envelope, inside minus outside, Pa. */
  pressure_Pa: Float64Array
  /** Flow in m³/h, or the device's own pressure in Pa. */
  flow: Float64Array
  flowKind: 'flow_m3_h' | 'devicePressure_Pa'
  /** What the log says about each sample: 0 nothing, 1 reading, 2 zero-flow, 3 to be skipped. */
  marks?: Uint8Array
  /** Number of the step that each sample is of, by the log's own markers. */
  blocks?: Uint32Array
}

/** A series with the cells it came from. */
export interface SeriesCells extends Series {
  sheet: string
  /** Row of each sample on the sheet, counted from 0, and the columns of pressure and flow. */
  rows: Uint32Array
  column: number
  flowColumn: number
}

/** A stretch over which pressure and flow hold steady. Sample numbers, both ends included. */
export interface Station {
  kind: 'reading' | 'zero-flow'
  first: number
  last: number
  /** The samples averaged: for a reading the window of the averaging time with the least drift, for zero flow the whole stretch. */
  window: { first: number; last: number }
  pressure: Average
  flow: Average
  /** Why no reading was taken from it. */
  rejected?: 'drift' | 'short'
}

export interface StationOptions {
  averagingTime_s: number
  /** Largest drift of the pressure over the averaging time, Pa. Left out: {@link DRIFT}. */
  driftLimit_Pa?: number
}

/** Limits of steadiness. Common practice, no source. */
export const DRIFT = {
  /** Drift that never matters, Pa. */
  floor_Pa: 1,
  /** Share of the mean. */
  share: 0.05,
  /** Noise alone makes a line drift; twice the standard uncertainty of that is not noise (95 %). */
  coverage: 2,
} as const

/** Largest drift accepted for an average. */
export function driftLimit({ mean, driftUncertainty }: Average, { driftLimit_Pa }: StationOptions): number {
  if (driftLimit_Pa !== undefined) return driftLimit_Pa
  return Math.max(DRIFT.floor_Pa, DRIFT.share * Math.abs(mean), DRIFT.coverage * driftUncertainty)
}

/** The cells a window of samples is in: Log!B120:B320. */
export function windowText(
  cells: SeriesCells,
  { first, last }: { first: number; last: number },
  column = cells.column,
): string {
  return withSheet(
    cells.sheet,
    blockText({ top: cells.rows[first] ?? 0, bottom: cells.rows[last] ?? 0, left: column, right: column }),
  )
}
