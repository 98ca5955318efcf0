import { addCheck } from './check.js'
import type { AddCommand } from './command.js'
import { addEvaluate } from './evaluate.js'
import { addServe } from './serve.js'
import { addToken } from './token.js'

/** Every command, in the order the help lists them. */
export const commands: readonly AddCommand[] = [addEvaluate, addCheck, addServe, addToken]
