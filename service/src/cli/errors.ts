import { existsSync } from 'node:fs'
import { dirname } from 'node:path'
import { InputError, type Problem, problemLine, problemWords } from '@draughtbook/shared-calc'
import type { Question } from '@draughtbook/shared-calc/log'
import { errorCode, fileFault } from '../files/file-fault.js'
import { faultOfPath } from '../files/near-file.js'
import { OpenQuestions } from '../input/open-questions.js'
import { Locked } from '../library/with-lock.js'

/** The command was called in a way that cannot be carried out; ends with exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError'
}

/** A file that cannot be read or evaluated, with everything that is wrong in it. */
export class FileError extends Error {
  override readonly name = 'FileError'
  constructor(
    readonly file: string,
    readonly problems: readonly Problem[],
    private readonly more: {
      readonly cause?: unknown
      readonly command?: string
      /** Field path → option that gave it. */
      readonly options?: Readonly<Record<string, string>>
    } = {},
  ) {
    super(`${file} cannot be read`, { cause: more.cause })
  }

  /** One line per fault, naming file, sheet and cell or field. */
  get lines(): string[] {
    const { command } = this.more
    return [
      ...this.problems.map((problem) => `${this.file}: ${this.#words(problem)}`),
      ...(command ? [`Then: ${command}`] : []),
    ]
  }

  /** The same with the options that gave values: a problem with one of them is named by its option, as it was typed. */
  withOptions(options: Readonly<Record<string, string>>): FileError {
    return new FileError(this.file, this.problems, { cause: this.cause, ...this.more, options })
  }

  /** Whoever writes records knows their fields by name, and so does `--set`; readings are not set by it. */
  #words(problem: Problem): string {
    const option = this.more.options?.[problem.path]
    if (option !== undefined && problem.cell === undefined)
      return `${option}: ${problem.message}${LISTED_BY[option] ?? ''}`
    const { cause } = this.more
    const asked = cause instanceof OpenQuestions && cause.questions.find(({ path }) => path === problem.path)
    if (asked) return questionLine(asked, problem)
    if (/\.json$/i.test(this.file)) return problemLine(problem)
    const { path, cell, message } = problem
    if (path.startsWith('runs')) return problemWords(problem)
    // The cell has to be corrected; the field says what it was read as.
    return cell === undefined ? problemLine(problem) : `${cell}: ${problemWords({ path, message })}`
  }
}

/** The option that answers names the field, and the text most of the cells: neither is said twice. */
function questionLine({ cells, text }: Question, { message }: Problem): string {
  const places = cells.slice(0, MOST_CELLS).filter((cell) => !text.includes(cell.split('!').at(-1) ?? cell))
  return places.length > 0 ? `${places.join(', ')}: ${message}` : message
}

const MOST_CELLS = 4

/** Where all values of an option are listed, if a message can only name some. */
const LISTED_BY: Readonly<Record<string, string>> = {
  '--target': '. List them all with: draughtbook targets',
}

/** An output that cannot be written. Where the system finds nothing, it is mostly the folder that is missing. */
export function cannotWrite(path: string, error: unknown): UsageError {
  const why =
    errorCode(error) === 'ENOENT' && !existsSync(dirname(path))
      ? `there is no folder ${dirname(path)}`
      : (fileFault(error) ?? String(error))
  return new UsageError(`${path} cannot be written: ${why}`)
}

/** Runs work on a file; whatever is wrong with its content or the file itself comes out under the file's name. */
export async function withFile<T>(file: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (error instanceof Locked)
      throw new FileError(file, [{ path: '', message: error.message }], { cause: error })
    if (error instanceof InputError) throw new FileError(file, error.problems, { cause: error })
    const fault = await faultOfPath(file, error)
    if (fault) throw new FileError(file, [{ path: '', message: fault }])
    throw error
  }
}
