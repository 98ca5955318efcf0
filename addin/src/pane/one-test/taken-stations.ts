import type { Finding, Run } from '@draughtbook/shared-calc'
import type { SeriesSettings } from '@draughtbook/shared-calc/log'

/** Readings taken over from the stations of a raw series: figures with the cells they were averaged from. */
export interface TakenStations {
  /** Cells of the series. */
  source: string
  settings: SeriesSettings
  run: Omit<Run, 'direction'>
  /** Field path within the run → cells. */
  cells: Readonly<Record<string, string>>
  /** What reading the series had to say; places within the run. */
  findings: readonly Finding[]
  /** The cells have since been seen to hold something else. */
  changed?: boolean
}

/** What was kept with a workbook is checked as far as it is used without another look. */
export function isStations(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  const { source, settings, run, cells, findings } = value as Partial<TakenStations>
  return (
    typeof source === 'string' &&
    typeof settings === 'object' &&
    typeof cells === 'object' &&
    cells !== null &&
    Object.values(cells).every((cell) => typeof cell === 'string') &&
    Array.isArray(findings) &&
    findings.every((finding) => Array.isArray(finding?.where)) &&
    Array.isArray(run?.readings)
  )
}
