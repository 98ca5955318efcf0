/** Where a run that was read is in the draft, and which of its readings are there. */
export interface PlacedRun {
  /** Its place where it was read, and in the draft. */
  readonly from: number
  readonly index: number
  /** Places, where they were read, of the readings in the draft. */
  readonly whole: readonly number[]
}

type Figures = Readonly<Record<string, unknown>>

/** Both figures of a reading could be read: of one that lacks a figure the cell is named as a problem. */
export const isWhole = ({ pressure_Pa, flow_m3_h, devicePressure_Pa, devices }: Figures): boolean =>
  pressure_Pa !== undefined && (flow_m3_h ?? devicePressure_Pa ?? devices) !== undefined

export const placed = (readings: readonly Figures[], from: number, index: number): PlacedRun => ({
  from,
  index,
  whole: readings.flatMap((reading, at) => (isWhole(reading) ? [at] : [])),
})

/** The path in the draft of what was read at a path; undefined for another run, and for a reading that is not there. */
export function pathInDraft(path: string, { from, index, whole }: PlacedRun): string | undefined {
  const start = `runs[${from}]`
  if (!path.startsWith(start)) return undefined
  const rest = path.slice(start.length)
  const at = /^\.readings\[(\d+)\]/.exec(rest)
  if (!at) return `runs[${index}]${rest}`
  const place = whole.indexOf(Number(at[1]))
  return place < 0 ? undefined : `runs[${index}].readings[${place}]${rest.slice(at[0].length)}`
}

/** Puts the cells of a run under their paths in the draft. */
export function placeCells(
  read: Readonly<Record<string, string>>,
  run: PlacedRun,
  cells: Record<string, string>,
): void {
  for (const [path, cell] of Object.entries(read)) {
    const own = pathInDraft(path, run)
    if (own !== undefined) cells[own] = cell
  }
}
