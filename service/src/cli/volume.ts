import { measureTakeOff, parseTakeOff, visible } from '@draughtbook/shared-calc'
import { writeTakeOffWorkbook } from '@draughtbook/shared-calc/workbook'
import { checkOutput } from './checked-output.js'
import type { AddCommand } from './command.js'
import { writeWorkbook } from './output-path.js'
import { labelled } from './print/evaluation-text.js'
import { takeOffText } from './print/take-off-text.js'
import { readJsonFile } from './read-input.js'

interface Options {
  readonly out?: string
  readonly json?: boolean
}

export const addVolume: AddCommand = (command, { terminal }) => {
  command
    .argument('<FILE.json>', 'take-off, or a record with a take-off')
    .option('--out <VOLUME.xlsx>', 'write the take-off as a workbook with live formulas')
    .option('--json', 'print the result as JSON')
    .action(async (file: string, { out, json }: Options) => {
      const request = await readJsonFile(file, parseTakeOff)
      const result = measureTakeOff(request.takeOff)
      if (out !== undefined) await checkOutput(out, 'take-off')
      if (out !== undefined) await writeWorkbook(out, () => writeTakeOffWorkbook(request))
      if (json) return terminal.out(JSON.stringify(result, null, 2))
      terminal.out(visible(takeOffText(request, result)))
      if (out !== undefined) terminal.out(visible(`\n${labelled('Workbook')(out, 0)}`))
    })
}
