import { addCheck } from './check.js'
import type { AddCommand } from './command.js'
import { addEvaluate } from './evaluate.js'
import { addKeys } from './keys.js'
import { addLayout } from './layout.js'
import { addPlan } from './plan.js'
import { addRegister } from './register.js'
import { addRerun } from './rerun.js'
import { addServe } from './serve.js'
import { addToken } from './token.js'
import { addVolume } from './volume.js'
import { addWorker } from './worker.js'

/** Every command, in the order the help lists them. */
export const commands: readonly AddCommand[] = [
  addEvaluate,
  addCheck,
  addLayout,
  addVolume,
  addPlan,
  addRegister,
  addRerun,
  addKeys,
  addServe,
  addWorker,
  addToken,
]
