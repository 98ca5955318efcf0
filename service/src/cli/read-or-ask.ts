import { basename } from 'node:path'
import type { Answers, Question } from '@draughtbook/shared-calc/log'
import { OpenQuestions } from '../input/open-questions.js'
import { quoted } from '../input/quoted.js'
import type { ReadTest } from '../input/read-sheet.js'
import { FileError } from './errors.js'
import { type ReadOptions, readInput } from './read-input.js'
import { type AnswerOptions, answersOf } from './set-answers.js'
import type { Terminal } from './terminal.js'

export interface AskOptions extends Omit<ReadOptions, 'answers'>, AnswerOptions {
  /** Ask nothing: what is open ends the run. */
  readonly acceptProposal?: boolean
}

/**
 * Reads a file. What a log leaves open is asked on a terminal where somebody watches; elsewhere it is an error with
 * one line a question and the command that answers them.
 */
export async function readOrAsk(file: string, options: AskOptions, terminal: Terminal): Promise<ReadTest[]> {
  let answers: Answers = answersOf(options)
  let asked = 0
  for (;;) {
    try {
      return await readInput(file, { layout: options.layout, answers })
    } catch (error) {
      const open =
        error instanceof FileError && error.cause instanceof OpenQuestions ? error.cause : undefined
      if (!open || !terminal.ask || options.acceptProposal) {
        throw open ? withCommand(error as FileError, file, open.questions, answers) : error
      }
      const [question] = open.questions
      if (!question) throw error
      if (asked === 0) terminal.err(`${basename(file)}: ${introduction(open.questions.length)}`)
      const refused = answers[question.path]
      if (refused !== undefined) terminal.err(`"${refused}" cannot be used here.`)
      // One at a time: an answer may settle other questions, and one that cannot be used is asked for again at once.
      const given = await terminal.ask(question)
      if (given === undefined) throw withCommand(error as FileError, file, open.questions, answers)
      asked += 1
      answers = { ...answers, [question.path]: given }
    }
  }
}

const introduction = (count: number): string =>
  `${count === 1 ? 'one question is' : `${count} questions are`} open. Ctrl-C stops and shows how to answer on the command line.`

/** The same error with a last line: the command with an answer to each question. */
function withCommand(
  error: FileError,
  file: string,
  questions: readonly Question[],
  answers: Answers,
): FileError {
  const again = new Set(questions.map(({ path }) => path))
  const given = Object.entries(answers).filter(([path]) => !again.has(path))
  const set = given.map(([path, value]) => `--set ${path}=${quoted(value)}`)
  const open = questions.map(({ path, choices, noneLikelier }) => {
    const likeliest = noneLikelier ? undefined : choices[0]?.value
    return `--set ${path}=${quoted(likeliest ?? '…')}`
  })
  return new FileError(error.file, error.problems, {
    cause: error.cause,
    command: `draughtbook evaluate ${quoted(file)} ${[...set, ...open].join(' ')}`,
  })
}
