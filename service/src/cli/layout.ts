import { readFile } from 'node:fs/promises'
import { basename, extname } from 'node:path'
import { visible } from '@draughtbook/shared-calc'
import {
  answersLayout,
  type Interpretation,
  interpretLog,
  openLog,
  savedLayout,
} from '@draughtbook/shared-calc/log'
import { writeAtomically } from '../files/write-atomically.js'
import type { AddCommand } from './command.js'
import { cannotWrite, UsageError, withFile } from './errors.js'
import { labelled } from './print/evaluation-text.js'
import { understoodText } from './print/understood-text.js'
import { lastChanged, readBytes } from './read-input.js'
import { type AnswerOptions, addAnswerOptions, answersOf, withAnswers } from './set-answers.js'

interface Options extends AnswerOptions {
  readonly out?: string
  readonly json?: boolean
}

export const addLayout: AddCommand = (command, { terminal }) => {
  command
    .argument('<FILE>', 'test log (.xlsx, .xlsm, .ods, .csv)')
    .option('--out <LAYOUT.json>', 'save the answers for other logs of this kind')
    .option('--json', 'print what was understood as JSON')
  addAnswerOptions(command).action(async (file: string, { out, json, ...given }: Options) => {
    // Any other name could be that of a log, which would be lost.
    if (out !== undefined && extname(out).toLowerCase() !== '.json')
      throw new UsageError(`--out must name a .json file, not ${out}`)
    const answers = answersOf(given)
    const { grid, read } = await withAnswers(given, () =>
      withFile(file, async () => {
        const opened = openLog(await readBytes(file), basename(file))
        return { grid: opened, read: interpretLog(opened, { answers, fileDate: await lastChanged(file) }) }
      }),
    )
    if (json) terminal.out(JSON.stringify(withoutRecords(read), null, 2))
    else terminal.out(visible(understoodText(read)))
    const own = savedLayout(grid)
    if (own)
      terminal.err(`${file}: evaluate reads this log by the layout "${own.name}", which is saved in it`)
    if (out === undefined) return
    if (read.tests.length === 0) throw new UsageError(`${file}: no test was found, so nothing was written`)
    await refuseOtherJson(out)
    const layout = answersLayout(grid, read, answers, basename(out).replace(/(\.layout)?\.json$/, ''))
    await writeAtomically(out, `${JSON.stringify(layout, null, 2)}\n`).catch((error: unknown) => {
      throw cannotWrite(out, error)
    })
    if (!json) terminal.out(visible(`\n${labelled('Layout')(out, 0)}`))
  })
}

/** What was understood, without the records: those are what `evaluate` is for. */
const withoutRecords = ({ tests, ...read }: Interpretation) => ({
  tests: tests.map(({ record, cells: _, draft: __, series: ___, ...test }) => ({
    ...test,
    complete: record !== undefined,
  })),
  ...read,
})

/** Only an earlier layout is replaced: a record or an entry of the library would be lost. */
async function refuseOtherJson(path: string): Promise<void> {
  const text = await readFile(path, 'utf8').catch(() => undefined)
  if (text === undefined || text.includes('"draughtbook/layout@')) return
  throw new UsageError(`${path} already exists and is not a layout; choose another name`)
}
