import { basename } from 'node:path'
import { openLog, propose } from '@draughtbook/shared-calc/log'
import { writeAtomically } from '../files/write-atomically.js'
import type { AddCommand } from './command.js'
import { withFile } from './file-error.js'
import { labelled } from './print/evaluation-text.js'
import { proposalText } from './print/proposal-text.js'
import { readBytes } from './read-input.js'
import { shown } from './terminal.js'
import { UsageError } from './usage-error.js'

interface Options {
  readonly out?: string
  readonly json?: boolean
}

export const addLayout: AddCommand = (command, { terminal }) => {
  command
    .argument('<FILE>', 'test log (.xlsx, .xlsm, .ods, .csv)')
    .option('--out <LAYOUT.json>', 'write the proposed layout')
    .option('--json', 'print the proposal as JSON')
    .action(async (file: string, { out, json }: Options) => {
      const proposal = await withFile(file, async () =>
        propose(openLog(await readBytes(file), basename(file))),
      )
      if (json) terminal.out(JSON.stringify(proposal, null, 2))
      else terminal.out(shown(proposalText(proposal)))
      if (out === undefined) return
      if (!proposal.layout) throw new UsageError(`${file}: no layout could be proposed; nothing was written`)
      await writeAtomically(out, `${JSON.stringify(proposal.layout, null, 2)}\n`)
      if (!json) terminal.out(shown(`\n${labelled('Layout')(out, 0)}`))
    })
}
