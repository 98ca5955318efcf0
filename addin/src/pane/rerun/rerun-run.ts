import type { RerunReport, RerunTest } from '@draughtbook/shared-calc/rerun'
import { ArchiveRun } from '../month/archive-run.js'
import { today } from '../month/today.js'

/** The re-run's run: lives as long as the page, so that a look at another view loses nothing. */
export const rerunRun = new ArchiveRun<RerunTest[], RerunReport>({
  each: (helper, file) => helper.ask<'rerun'>({ kind: 'rerun', ...file }),
  setAside: (file, why) => [
    {
      file,
      outcome: 'cannot be read',
      why,
      compared: { figures: 0, cells: 0 },
      differences: [],
      sinceIssue: [],
      notes: [],
    },
  ],
  report: (helper, results) =>
    helper.ask<'make-rerun'>({ kind: 'make-rerun', tests: results.flat(), asOf: today() }),
})
