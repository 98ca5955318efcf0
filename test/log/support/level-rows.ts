export interface Level {
  pressure_Pa: number
  device: number
  hold_s: number
  mark?: string
}

/**
 * Rows of a time log whose averages are known by heart: every level is held with a pressure that alternates evenly about
 * it, and jumps to the next. Columns: seconds, pressure, device, mark.
 */
export function levelRows(levels: readonly Level[], rate_Hz: number, swing_Pa: number) {
  const rows: [seconds: number, pressure: number, device: number, mark: string][] = []
  for (const { pressure_Pa, device, hold_s, mark = '' } of levels)
    for (let step = 0; step < hold_s * rate_Hz; step++)
      rows.push([rows.length / rate_Hz, pressure_Pa + (step % 2 === 0 ? swing_Pa : -swing_Pa), device, mark])
  return rows
}
