import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Collector } from '../collector.js'
import type { DraftRun } from './runs.js'

/**
 * Takes out runs of which nothing was filled in, as where a form has room for both directions and one was run. A note says
 * so; a log in which all are blank is left as it is, for the record's own checks to name what is missing.
 */
export function takeOutBlankRuns(runs: DraftRun[], collector: Collector): void {
  if (runs.every(isBlank)) return
  for (let index = runs.length - 1; index >= 0; index--) {
    const run = runs[index]
    if (!run || !isBlank(run)) continue
    runs.splice(index, 1)
    collector.takeOutRun(index)
    collector.tell(tableText('log-blank-run', { direction: run.direction }), '', 'runs')
  }
}

function isBlank({ readings = [], zeroFlowBefore_Pa = [], zeroFlowAfter_Pa = [] }: DraftRun): boolean {
  return readings.length + zeroFlowBefore_Pa.length + zeroFlowAfter_Pa.length === 0
}
