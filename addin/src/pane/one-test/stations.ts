import type { Direction } from '@draughtbook/shared-calc'
import type { PickedRun, SeriesSettings } from '@draughtbook/shared-calc/log'
import type { TestEntries } from './entries.js'
import type { TakenStations } from './taken-stations.js'

/** The stations as entries keep them. */
export function takenOf(
  { run, cells, findings }: PickedRun,
  source: string,
  settings: SeriesSettings,
): TakenStations {
  const { direction: _, ...rest } = run
  return { source, settings, run: rest, cells, findings }
}

/** Puts the stations in place of whatever the run had. */
export const withStations = (
  entries: TestEntries,
  direction: Direction,
  stations: TakenStations,
): TestEntries => ({ ...entries, runs: { ...entries.runs, [direction]: { stations } } })

/** Whether reading the cells again gives the same figures. */
export const sameFigures = ({ run }: TakenStations, again: PickedRun | undefined): boolean =>
  again !== undefined && JSON.stringify(run) === JSON.stringify(takenOf(again, '', {}).run)
