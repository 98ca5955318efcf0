import { evaluate } from '@draughtbook/shared-calc'
import type { AddCommand } from './command.js'
import { withFile } from './file-error.js'
import { findingsText } from './print/findings-text.js'
import { type ReadOptions, readInput } from './read-input.js'
import { shown } from './terminal.js'

export const addCheck: AddCommand = (command, { terminal }) => {
  command
    .argument('<FILE>', 'record, test log or one of our own workbooks')
    .option('--layout <LAYOUT.json>', 'where the log keeps each thing')
    .option('--accept-proposal', 'use the layout found by guessing, where none fits')
    .option('--json', 'print the findings as JSON')
    .action(async (file: string, options: ReadOptions & { json?: boolean }) => {
      const tests = await readInput(file, options)
      const found = await withFile(file, async () =>
        tests.map(({ record, cells, findings }) => evaluate(record, { cells, findings }).findings),
      )
      if (options.json) return terminal.out(JSON.stringify(found.length === 1 ? found[0] : found, null, 2))
      for (const [i, findings] of found.entries()) {
        const name = tests.length === 1 ? '' : `${tests[i]?.record.building.name ?? ''}\n`
        terminal.out(shown(name + findingsText(findings)))
      }
    })
}
