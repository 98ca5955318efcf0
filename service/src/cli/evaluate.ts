import { type Evaluation, evaluate, visible } from '@draughtbook/shared-calc'
import type { ReadTest } from '../input/read-sheet.js'
import { LIBRARY_VARIABLE } from '../library/layouts.js'
import { type AddCommand, DIFFERENT, UNREADABLE } from './command.js'
import { FileError, UsageError, withFile } from './errors.js'
import { inputFiles } from './input-files.js'
import { traceText, uncertaintyText } from './print/detail-text.js'
import { evaluationText, labelled } from './print/evaluation-text.js'
import { readOrAsk } from './read-or-ask.js'
import type { PicturedTest, PictureWish } from './read-pictures.js'
import { type AnswerOptions, addAnswerOptions, withAnswers } from './set-answers.js'
import type { Terminal } from './terminal.js'
import type { PdfWish } from './write-pdfs.js'

interface Options extends PdfWish, AnswerOptions, PictureWish {
  readonly layout?: string
  readonly acceptProposal?: boolean
  readonly json?: boolean
  readonly trace?: boolean
  readonly uncertainty?: boolean
}

export const addEvaluate: AddCommand = (command, { terminal, end }) => {
  command
    .argument('<FILE...>', 'records, test logs, Draughtbook workbooks, or folders of them')
    .option('--layout <LAYOUT.json>', 'where each item is in the log, or answers for logs of this kind')
    .option('--accept-proposal', 'never ask on the terminal; calculate what is clear and list what is not')
    .option('--out <SUMMARY.xlsx>', 'where to write the workbook; replaces an earlier summary')
    .option(
      '--pdf [FILE.pdf]',
      'also write summary and test report as a PDF, named like the workbook unless you give a name',
    )
    .option(
      '--photos <FOLDER>',
      'add photos: those named in the list of leaks next to their leak, all others as photos of the set-up',
    )
    .option('--keep-photo-details', 'leave place, time and camera in the photos; they are removed otherwise')
    .option('--force', 'replace an existing file, whatever it holds')
    .option('--sign <KEY>', 'sign the workbook with the firm’s private key (draughtbook keys)')
    .option('--json', 'print only the evaluation, as JSON; writes a workbook only with --out')
    .option('--trace', 'show every step of the working')
    .option('--uncertainty', 'add the uncertainty budget and the probability of meeting the target')
  addAnswerOptions(command).action(async (given: string[], options: Options) => {
    const files = await inputFiles(given)
    if (files.length > 1 && options.out !== undefined)
      throw new UsageError(
        `--out names one workbook, but ${files.length} files were given; without --out each workbook is written next to its file`,
      )
    if (files.length > 1 && typeof options.pdf === 'string')
      throw new UsageError(
        `--pdf names one file, but ${files.length} files were given; give --pdf without a name`,
      )
    const evaluations: Evaluation[] = []
    let failed = 0
    for (const file of files) {
      try {
        evaluations.push(...(await withAnswers(options, () => evaluateFile(file, options, terminal))))
      } catch (error) {
        // One of many that cannot be read is named, and the rest is done.
        if (files.length === 1 || !(error instanceof FileError)) throw error
        for (const line of error.lines) terminal.err(line)
        failed++
      }
    }
    if (failed > 0) end(failed < files.length ? DIFFERENT : UNREADABLE)
    if (options.json)
      terminal.out(
        JSON.stringify(
          files.length === 1 && evaluations.length === 1 ? evaluations[0] : evaluations,
          null,
          2,
        ),
      )
  })
}

/** Pictures need code of their own, which is loaded only where there may be some. */
async function pictured(tests: ReadTest[], options: Options): Promise<PicturedTest[]> {
  if (options.photos === undefined && !process.env[LIBRARY_VARIABLE]) return tests
  return (await import('./read-pictures.js')).withPictures(tests, options)
}

async function evaluateFile(file: string, options: Options, terminal: Terminal): Promise<Evaluation[]> {
  const tests = await pictured(await readOrAsk(file, options, terminal), options)
  // Every test is evaluated before the first file is written: a fault in the last leaves nothing behind.
  const evaluations = await withFile(file, async () =>
    tests.map(({ record, cells, findings, pictures }) =>
      evaluate(record, {
        cells,
        findings: [...findings, ...(pictures?.findings ?? [])],
        trace: options.trace === true,
        ...(options.uncertainty && { uncertainty: true }),
      }),
    ),
  )
  const skip = options.json === true && options.out === undefined
  const written = skip
    ? []
    : await (await import('./write-summaries.js')).writeSummaries(file, tests, options)
  const pdfs =
    options.pdf === undefined ? [] : await (await import('./write-pdfs.js')).writePdfs(file, tests, options)
  for (const line of pdfs.flatMap(({ notes }) => notes)) terminal.err(visible(line))
  if (options.json) return evaluations
  for (const [i, evaluation] of evaluations.entries()) {
    const { record } = tests[i] ?? {}
    if (record) terminal.out(visible(evaluationText(record, evaluation)))
    if (evaluation.uncertainty) terminal.out(visible(`\n${uncertaintyText(evaluation)}`))
    if (options.trace) terminal.out(visible(`\n${traceText(evaluation)}`))
    terminal.out(visible(`\n${labelled('Workbook')(written[i] ?? '', 0)}`))
    const pdf = pdfs[i]
    if (pdf) terminal.out(visible(labelled('PDF')(pdf.path, 0)))
  }
  return evaluations
}
