import { visible } from '@draughtbook/shared-calc'
import { InvalidArgumentError } from 'commander'
import { type ArchiveOptions, addArchiveOptions } from './archive-options.js'
import { checkOutput } from './checked-output.js'
import { type AddCommand, DIFFERENT, UNREADABLE } from './command.js'
import { UsageError, withFile } from './errors.js'
import { count } from './print/number-text.js'
import { registerLines } from './print/register-lines.js'
import { readBytes } from './read-input.js'
import { runFiles } from './run-files.js'
import { writeRegisters } from './write-registers.js'

interface Options extends ArchiveOptions {
  readonly month?: string
  readonly out?: string
  readonly by?: 'client'
  readonly strict?: boolean
  readonly previous?: string
  readonly orders?: string
}

const month = (text: string): string => {
  if (!/^\d{4}-(0[1-9]|1[0-2])$/.test(text)) throw new InvalidArgumentError('give a month such as 2026-10')
  return text
}

const client = (text: string): 'client' => {
  if (text !== 'client') throw new InvalidArgumentError('the only choice is client')
  return text
}

/** The bytes of a file that was named. Throws FileError. */
const bytesOf = (path: string): Promise<Uint8Array> => withFile(path, () => readBytes(path))

export const addRegister: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--month <YYYY-MM>', 'only tests of this month', month)
    .option(
      '--out <REGISTER.xlsx>',
      'where to write the register (.xlsx or .csv); replaces an earlier register',
    )
    .option('--by <WHAT>', '"client" also writes one register for each client, next to --out', client)
    .option('--previous <REGISTER.xlsx>', 'earlier register whose months are added to this one')
    .option(
      '--orders <ORDERS.csv>',
      'list with the columns test number, order number, fee (.csv, .xlsx, .ods)',
    )
    .option('--strict', 'if a file cannot be read, write nothing and exit with 2')
    .action(async (paths: string[], options: Options) => {
      const { out } = options
      if (out === undefined && !options.json)
        throw new UsageError('name the register with --out REGISTER.xlsx, or use --json')
      if (out === undefined && options.by !== undefined)
        throw new UsageError('--by client needs --out REGISTER.xlsx')
      if (out !== undefined) await checkOutput(out, 'register', ['.xlsx', '.csv'])
      const { makeRegister, readOrders, readTrend, withOrders } = await import(
        '@draughtbook/shared-calc/register'
      )
      const { previous: earlier } = options
      const previous = earlier === undefined ? [] : readTrend(await bytesOf(earlier), earlier)
      const orders =
        options.orders === undefined ? [] : readOrders(await bytesOf(options.orders), options.orders)
      const { results, others } = await runFiles('register', paths, options, terminal)
      const { lines, unknown } = withOrders(
        results.flatMap((result) => result.lines),
        orders,
      )
      for (const number of unknown)
        terminal.err(`${options.orders}: no test in these files has the number ${number}`)
      const about = {
        asOf: options.asOf,
        previous,
        ...(options.month !== undefined && { month: options.month }),
      }
      const register = makeRegister(lines, [...others, ...results.flatMap(({ leftOut }) => leftOut)], about)
      const unread = register.leftOut.filter(({ expected }) => !expected)
      for (const { file, part, why } of unread)
        terminal.err(`${file}${part === undefined ? '' : ` (${part})`}: ${why}`)
      if (unread.length > 0 && (options.strict || lines.length === 0)) {
        terminal.err(
          options.strict && lines.length > 0
            ? `${count(unread.length, 'file')} could not be read, so with --strict no register was written`
            : 'No register was written: none of the files could be read.',
        )
        return end(UNREADABLE)
      }
      const written = out === undefined ? [] : await writeRegisters(out, register, lines, about, options.by)
      if (unread.length > 0) end(DIFFERENT)
      if (options.json) return terminal.out(JSON.stringify(register, null, 2))
      terminal.out(
        visible(
          [
            ...registerLines(
              register,
              written.some((path) => /\.xlsx$/i.test(path)),
            ),
            ...written.map((path) => `Register: ${path}`),
          ].join('\n'),
        ),
      )
    })
}
