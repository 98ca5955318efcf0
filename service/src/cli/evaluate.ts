import { evaluate } from '@draughtbook/shared-calc'
import type { AddCommand } from './command.js'
import { withFile } from './file-error.js'
import type { OutputWish } from './output-path.js'
import { evaluationText, labelled } from './print/evaluation-text.js'
import { traceText } from './print/trace-text.js'
import { readInput } from './read-input.js'
import { shown } from './terminal.js'
import { writeSummaries } from './write-summaries.js'

interface Options extends OutputWish {
  readonly layout?: string
  readonly acceptProposal?: boolean
  readonly json?: boolean
  readonly trace?: boolean
}

export const addEvaluate: AddCommand = (program, { terminal }) => {
  program
    .command('evaluate')
    .description('evaluate a record (.json) or test log (.xlsx, .xlsm, .csv) and write its summary workbook')
    .argument('<FILE>', 'record, test log or one of our own workbooks')
    .option('--layout <LAYOUT.json>', 'where the log keeps each thing')
    .option('--accept-proposal', 'use the layout found by guessing, where none fits')
    .option('--out <SUMMARY.xlsx>', 'where to write the workbook; replaces what is there')
    .option('--force', 'replace a workbook of other content that stands beside the input')
    .option('--sign <KEY>', 'sign the workbook with the firm’s private key (draughtbook keys)')
    .option('--json', 'print the evaluation alone, as JSON; writes a workbook only with --out')
    .option('--trace', 'show every step of the working')
    .action(async (file: string, options: Options) => {
      const tests = await readInput(file, options)
      // Every test is evaluated before the first file is written: a fault in the last leaves nothing behind.
      const evaluations = await withFile(file, async () =>
        tests.map(({ record, cells, findings }) =>
          evaluate(record, { cells, findings, trace: options.trace === true }),
        ),
      )
      const skip = options.json === true && options.out === undefined
      const written = skip ? [] : await writeSummaries(file, tests, options)
      if (options.json) {
        terminal.out(JSON.stringify(evaluations.length === 1 ? evaluations[0] : evaluations, null, 2))
        return
      }
      for (const [i, evaluation] of evaluations.entries()) {
        const { record } = tests[i] ?? {}
        if (record) terminal.out(shown(evaluationText(record, evaluation)))
        if (options.trace) terminal.out(shown(`\n${traceText(evaluation)}`))
        terminal.out(shown(`\n${labelled('Workbook')(written[i] ?? '', 0)}`))
      }
    })
}
