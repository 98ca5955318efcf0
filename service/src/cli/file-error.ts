import { InputError, type Problem, problemLine } from '@draughtbook/shared-calc'
import { fileFault } from '../files/file-fault.js'

/** A file that cannot be read or evaluated, with everything that is wrong in it. */
export class FileError extends Error {
  override readonly name = 'FileError'
  constructor(
    readonly file: string,
    readonly problems: readonly Problem[],
  ) {
    super(`${file} cannot be read`)
  }

  /** One line per fault, naming file, sheet and cell or field. */
  get lines(): string[] {
    return this.problems.map((problem) => `${this.file}: ${problemLine(problem)}`)
  }
}

/** Runs work on a file; whatever is wrong with its content or the file itself comes out under the file's name. */
export async function withFile<T>(file: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (error instanceof InputError) throw new FileError(file, error.problems)
    const fault = fileFault(error)
    if (fault) throw new FileError(file, [{ path: '', message: fault }])
    throw error
  }
}
