import type { ReadLines, Register } from '@draughtbook/shared-calc/register'
import { ArchiveRun } from './archive-run.js'
import { today } from './today.js'

/** Month asked for, as 2026-10; '' for every test. */
export const asked = { month: '' }

/** The register's run: lives as long as the page, so that a look at another view loses nothing. */
export const monthRun = new ArchiveRun<ReadLines, Register>({
  each: (helper, file) => helper.ask<'read'>({ kind: 'read', ...file }),
  setAside: (file, why) => ({ lines: [], leftOut: [{ file, why }] }),
  report: (helper, read, others) =>
    helper.ask<'make-register'>({
      kind: 'make-register',
      read,
      others,
      asOf: today(),
      ...(asked.month === '' ? {} : { month: asked.month }),
    }),
})
