import type { Run } from '@draughtbook/shared-calc'
import { pageText } from '@draughtbook/shared-calc/log'
import type { TakenStations } from '../pane/one-test/taken-stations.js'
import type { Told } from './told.js'

/** Where the run stands in the record, and what takes its cells and findings. */
interface Target {
  index: number
  cells: Record<string, string>
  told: Told
}

/** The figures of a run that were taken over from a raw series, with the cells and findings they came with. */
export function takenRun(
  { source, run, cells, findings, changed }: TakenStations,
  { index, cells: into, told }: Target,
): Omit<Run, 'direction'> {
  const path = (within: string): string => `runs[${index}]${within ? `.${within}` : ''}`
  for (const [within, cell] of Object.entries(cells)) into[path(within)] = cell
  for (const finding of findings) told.take({ ...finding, where: finding.where.map(path) })
  if (changed) told.tell(pageText('series-changed'), source)
  return run
}
