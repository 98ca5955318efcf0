import { visible } from '@draughtbook/shared-calc'
import { libraryKeys, readKeyFile } from '../library/keys.js'
import { type ArchiveOptions, addArchiveOptions, collect } from './archive-options.js'
import { checkOutput } from './checked-output.js'
import { type AddCommand, DIFFERENT, UNREADABLE } from './command.js'
import { UsageError } from './errors.js'
import { writeWorkbook } from './output-path.js'
import { countLines, testLines } from './print/rerun-lines.js'
import { runFiles } from './run-files.js'

/** Said of reports that hold nothing to compare. */
const NO_RECORD =
  'not re-run: it holds no record of a test; a plan or a take-off has none. To check a register, a building, stages or a re-run, give the files of its tests too. A re-run is checked only by the calculation version that made it.'

interface Options extends ArchiveOptions {
  readonly key: readonly string[]
  readonly requireSignature?: boolean
  readonly out?: string
}

export const addRerun: AddCommand = (command, { terminal, end }) => {
  addArchiveOptions(command)
    .option('--key <KEY.pub>', 'public key to check signatures; may be repeated', collect, [])
    .option('--require-signature', 'fail every workbook that is not signed with one of your keys')
    .option('--out <RERUN.xlsx>', 'where to write the re-run; replaces an earlier one')
    .action(async (paths: string[], options: Options) => {
      const { foundDifference, makeRerunReport, unreadable, writeRerunWorkbook } = await import(
        '@draughtbook/shared-calc/rerun'
      )
      const { out } = options
      if (out !== undefined) await checkOutput(out, 're-run')
      const keys = await readKeys(options.key)
      if (options.requireSignature && keys.length === 0)
        throw new UsageError(
          '--require-signature needs a public key: give it with --key KEY.pub, or keep it in the folder keys of the library',
        )
      const { files, results, others } = await runFiles('rerun', paths, options, terminal, {
        keys,
        requireSignature: options.requireSignature === true,
      })
      const missing = others.filter(({ expected }) => !expected).map(({ file, why }) => unreadable(file, why))
      const passedOver = files.filter((_, i) => results[i]?.length === 0)
      const report = await makeRerunReport([...results.flat(), ...missing], options.asOf, passedOver)
      if (out !== undefined) await writeWorkbook(out, () => writeRerunWorkbook(report))
      // Where no file could be compared, nothing was checked: that is no answer at all.
      if (report.tests.every(({ outcome }) => outcome === 'cannot be read')) end(UNREADABLE)
      else if (foundDifference(report)) end(DIFFERENT)
      for (const { file, part, outcome, why } of report.tests)
        if (outcome === 'cannot be read')
          terminal.err(`${file}${part === undefined ? '' : ` (${part})`}: ${why}`)
      for (const file of report.passedOver ?? []) terminal.err(`${file}: ${NO_RECORD}`)
      if (options.json) return terminal.out(JSON.stringify(report, null, 2))
      for (const test of report.tests) for (const line of testLines(test)) terminal.out(visible(line))
      for (const line of countLines(report)) terminal.out(visible(line))
      if (out !== undefined) terminal.out(visible(`Re-run: ${out}`))
    })
}

/** Keys named, then those of the firm's library. Throws UsageError naming the file that is not a key. */
async function readKeys(paths: readonly string[]): Promise<string[]> {
  try {
    return [...(await Promise.all(paths.map(readKeyFile))), ...(await libraryKeys())]
  } catch (error) {
    throw error instanceof RangeError ? new UsageError(error.message) : error
  }
}
