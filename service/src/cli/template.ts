import { existsSync } from 'node:fs'
import { extname } from 'node:path'
import { visible } from '@draughtbook/shared-calc'
import { writeLogTemplate } from '@draughtbook/shared-calc/workbook'
import type { AddCommand } from './command.js'
import { UsageError } from './errors.js'
import { writeWorkbook } from './output-path.js'
import { labelled } from './print/evaluation-text.js'
import { whole } from './serve.js'

interface Options {
  readonly out: string
  readonly method: string
  readonly readings: number
  readonly force?: boolean
}

export const addTemplate: AddCommand = (command, { terminal }) => {
  command
    .requiredOption('--out <LOG.xlsx>', 'where to write the empty log')
    .option('--method <METHOD>', 'test method, filled in beforehand', 'iso-9972:2015')
    .option('--readings <NUMBER>', 'rows for readings in each direction', whole, 10)
    .option('--force', 'replace an existing file')
    .action(async ({ out, method, readings, force }: Options) => {
      if (extname(out).toLowerCase() !== '.xlsx')
        throw new UsageError(`--out must name an .xlsx file, not ${out}`)
      // A log of this name may have been filled in.
      if (!force && existsSync(out))
        throw new UsageError(`${out} already exists; use --force to replace it, or choose another name`)
      await writeWorkbook(out, () => writeLogTemplate({ method, readings }))
      terminal.out(visible(labelled('Log')(out, 0)))
    })
}
