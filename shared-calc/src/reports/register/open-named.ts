import { InputError } from '../../contract/problem.js'
import type { Grid } from '../../log/grid/grid.js'
import { openLog } from '../../log/open-log.js'

/** Opens a file that is given beside the tests. @throws InputError that names the file, whatever stands in the way */
export function openNamed(bytes: Uint8Array, file: string): Grid {
  try {
    return openLog(bytes, file)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(error.problems.map((problem) => ({ ...problem, path: file })))
  }
}
