import { evaluate, visible } from '@draughtbook/shared-calc'
import type { AddCommand } from './command.js'
import { withFile } from './errors.js'
import { findingsText } from './print/findings-text.js'
import { type AskOptions, readOrAsk } from './read-or-ask.js'
import { addAnswerOptions, withAnswers } from './set-answers.js'

export const addCheck: AddCommand = (command, { terminal }) => {
  command
    .argument('<FILE>', 'record, test log or Draughtbook workbook')
    .option('--layout <LAYOUT.json>', 'where each item is in the log')
    .option('--accept-proposal', 'never ask on the terminal')
    .option('--json', 'print the findings as JSON')
  addAnswerOptions(command).action(async (file: string, options: AskOptions & { json?: boolean }) => {
    const found = await withAnswers(options, async () => {
      const tests = await readOrAsk(file, options, terminal)
      return withFile(file, async () =>
        tests.map(({ record, cells, findings }) => ({
          record,
          findings: evaluate(record, { cells, findings }).findings,
        })),
      )
    })
    if (options.json) {
      const lists = found.map(({ findings }) => findings)
      return terminal.out(JSON.stringify(lists.length === 1 ? lists[0] : lists, null, 2))
    }
    for (const { record, findings } of found) {
      const name = found.length === 1 ? '' : `${record.building.name}\n`
      terminal.out(visible(name + findingsText(findings, record)))
    }
  })
}
