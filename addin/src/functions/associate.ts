import { ArgumentFault } from './arguments.js'
import type { Invocation } from './functions.js'
import { functionTable } from './table.js'

/** Connects the names in functions.json with the code. The calculation itself is fetched at the first call. */
export function associateFunctions(): void {
  for (const { id } of functionTable)
    CustomFunctions.associate(id, async (...given: unknown[]) => {
      const { call } = await import('./functions.js')
      const invocation = given.at(-1) as Invocation
      try {
        return call(id, given.slice(0, -1), invocation)
      } catch (error) {
        throw cellError(error)
      }
    })
}

/** Only #VALUE! and #N/A can carry a message. */
function cellError(error: unknown): CustomFunctions.Error {
  const words = error instanceof ArgumentFault ? error.message : `the function failed: ${String(error)}`
  return new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, words)
}
