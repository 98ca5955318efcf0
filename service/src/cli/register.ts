import { InvalidArgumentError } from 'commander'
import { type ArchiveOptions, addArchiveOptions } from './archive-options.js'
import { type AddCommand, DIFFERENT } from './command.js'
import { count } from './print/number-text.js'
import { runFiles } from './run-files.js'
import { shown } from './terminal.js'
import { UsageError } from './usage-error.js'
import { writeWorkbook } from './write-workbook.js'

interface Options extends ArchiveOptions {
  readonly month?: string
  readonly out?: string
}

const month = (text: string): string => {
  if (!/^\d{4}-(0[1-9]|1[0-2])$/.test(text)) throw new InvalidArgumentError('give a month such as 2026-10')
  return text
}

export const addRegister: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--month <YYYY-MM>', 'only tests of this month', month)
    .option('--out <REGISTER.xlsx>', 'where to write the register; replaces an existing file')
    .action(async (paths: string[], options: Options) => {
      const { out } = options
      if (out === undefined && !options.json)
        throw new UsageError('name the register with --out REGISTER.xlsx, or use --json')
      const { makeRegister, writeRegisterWorkbook } = await import('@draughtbook/shared-calc/register')
      const { results, others } = await runFiles('register', paths, options, terminal)
      const register = makeRegister(
        results.flatMap(({ lines }) => lines),
        [...others, ...results.flatMap(({ leftOut }) => leftOut)],
        { asOf: options.asOf, ...(options.month !== undefined && { month: options.month }) },
      )
      if (out !== undefined) await writeWorkbook(out, () => writeRegisterWorkbook(register))
      const unread = register.leftOut.filter(({ expected }) => !expected)
      for (const { file, part, why } of unread)
        terminal.err(`${file}${part === undefined ? '' : ` (${part})`}: ${why}`)
      if (unread.length > 0) end(DIFFERENT)
      if (options.json) return terminal.out(JSON.stringify(register, null, 2))
      const { tests, meets, misses, notValid } = register.overall
      terminal.out(
        shown(
          `${count(tests, 'test')}: ${meets} met the target, ${misses} failed, ${notValid} not valid; ${count(register.leftOut.length, 'file')} left out\nRegister: ${out ?? ''}`,
        ),
      )
    })
}
