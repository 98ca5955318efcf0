import { stat } from 'node:fs/promises'
import { InputError } from '@draughtbook/shared-calc'
import { fileFault } from '../files/file-fault.js'
import { readTokens } from '../security/tokens/token-file.js'
import type { Settings } from './settings.js'

/**
 * What the settings name that is not there yet or cannot be read, one sentence each. Both are made when they are first written, so the
 * service starts; but a misspelt path would otherwise show only by what is missing.
 */
export async function missingPaths({ library, tokens }: Settings): Promise<string[]> {
  const said: string[] = []
  if (library !== undefined && !(await isThere(library)))
    said.push(
      `the library folder ${library} does not exist yet; it is created when something is first saved in it`,
    )
  else if (
    library !== undefined &&
    !(await stat(library).then(
      (one) => one.isDirectory(),
      () => true,
    ))
  )
    said.push(`the library ${library} is a file, not a folder; nothing can be read from it or saved in it`)
  if (tokens !== undefined && !(await isThere(tokens)))
    said.push(
      `the token file ${tokens} does not exist yet; nobody can sign in with a token until one is made with draughtbook token add NAME --tokens ${tokens}`,
    )
  else if (tokens !== undefined) {
    const fault = await readTokens(tokens).then(() => undefined, faultIn)
    if (fault !== undefined)
      said.push(`the token file ${tokens} cannot be read (${fault}); nobody can sign in with a token`)
  }
  return said
}

/** The first fault stands for all. */
const faultIn = (error: unknown): string =>
  (error instanceof InputError ? error.problems[0]?.message : fileFault(error)) ?? String(error)

const isThere = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    (error: unknown) => (error as NodeJS.ErrnoException).code !== 'ENOENT',
  )
