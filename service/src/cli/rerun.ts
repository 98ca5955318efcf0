import { readFile } from 'node:fs/promises'
import { publicKeyOf } from '../signature/keys.js'
import { type ArchiveOptions, addArchiveOptions, collect } from './archive-options.js'
import { type AddCommand, DIFFERENT } from './command.js'
import { withFile } from './file-error.js'
import { count } from './print/number-text.js'
import { runFiles } from './run-files.js'
import { shown } from './terminal.js'
import { UsageError } from './usage-error.js'
import { writeWorkbook } from './write-workbook.js'

interface Options extends ArchiveOptions {
  readonly key: readonly string[]
  readonly out?: string
}

export const addRerun: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--key <KEY.pub>', 'public key to check signatures; may be repeated', collect, [])
    .option('--out <RERUN.xlsx>', 'where to write the re-run; replaces an existing file')
    .action(async (paths: string[], options: Options) => {
      const { foundDifference, makeRerunReport, outcomes, unreadable, writeRerunWorkbook } = await import(
        '@draughtbook/shared-calc/rerun'
      )
      const keys = await Promise.all(options.key.map(readKey))
      const { results, others } = await runFiles('rerun', paths, options, terminal, keys)
      const missing = others.filter(({ expected }) => !expected).map(({ file, why }) => unreadable(file, why))
      const report = makeRerunReport([...results.flat(), ...missing], options.asOf)
      const { out } = options
      if (out !== undefined) await writeWorkbook(out, () => writeRerunWorkbook(report))
      if (foundDifference(report)) end(DIFFERENT)
      for (const { file, part, outcome, why } of report.tests)
        if (outcome === 'cannot be read')
          terminal.err(`${file}${part === undefined ? '' : ` (${part})`}: ${why}`)
      if (options.json) return terminal.out(JSON.stringify(report, null, 2))
      for (const { file, part, outcome, why } of report.tests)
        if (outcome !== 'agrees' && outcome !== 'rounding only' && outcome !== 'cannot be read')
          terminal.out(shown(`${file}${part === undefined ? '' : ` (${part})`}: ${outcome}: ${why}`))
      const counts = outcomes.map((outcome) => `${outcome} ${report.counts[outcome]}`).join(', ')
      terminal.out(shown(`${count(report.tests.length, 'test')} re-run: ${counts}`))
      if (out !== undefined) terminal.out(shown(`Re-run: ${out}`))
    })
}

/** A public key as text, checked. */
function readKey(path: string): Promise<string> {
  return withFile(path, async () => {
    const pem = await readFile(path, 'utf8')
    try {
      publicKeyOf(pem)
    } catch (error) {
      throw error instanceof RangeError ? new UsageError(`${path}: ${error.message}`) : error
    }
    return pem
  })
}
