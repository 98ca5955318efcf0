import { readdir } from 'node:fs/promises'
import { makePlan, parsePlan, visible } from '@draughtbook/shared-calc'
import { writePlanWorkbook } from '@draughtbook/shared-calc/workbook'
import { LIBRARY_VARIABLE } from '../library/layouts.js'
import { firmsPlan, Library } from '../library/library.js'
import { checkOutput } from './checked-output.js'
import type { AddCommand } from './command.js'
import { withFile } from './errors.js'
import { writeWorkbook } from './output-path.js'
import { labelled } from './print/evaluation-text.js'
import { planText } from './print/plan-text.js'
import { readJsonFile } from './read-input.js'

interface Options {
  readonly library?: string
  readonly out?: string
  readonly json?: boolean
}

export const addPlan: AddCommand = (command, { terminal }) => {
  command
    .argument('<FILE.json>', 'plan, or a record with a plan')
    .option('--library <FOLDER>', 'the firm’s devices and gauges, used if the plan names none')
    .option('--out <PLAN.xlsx>', 'write the plan as a sheet for the site, with live formulas')
    .option('--json', 'print the result as JSON')
    .action(async (file: string, { library, out, json }: Options) => {
      if (library !== undefined) await withFile(library, () => readdir(library))
      const folder = library ?? process.env[LIBRARY_VARIABLE]
      const asked = await readJsonFile(file, parsePlan)
      const request = folder ? await firmsPlan(asked, new Library(folder)) : asked
      const result = await withFile(file, async () => makePlan(request))
      if (out !== undefined) await checkOutput(out, 'plan')
      if (out !== undefined) await writeWorkbook(out, () => writePlanWorkbook(request))
      if (json) return terminal.out(JSON.stringify(result, null, 2))
      terminal.out(visible(planText(request, result)))
      if (out !== undefined) terminal.out(visible(`\n${labelled('Workbook')(out, 0)}`))
    })
}
