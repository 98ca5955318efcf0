import { InputError } from '../problem.js'
import { en13829 } from './en-13829.js'
import { iso9972 } from './iso-9972.js'
import type { Method } from './method.js'

export type { Method, MethodLimits } from './method.js'

/** Every test method the tool can follow. */
export const methods: readonly Method[] = [iso9972, en13829]

/** The method with an id. Throws InputError naming `test.method` and the methods there are. */
export function methodById(id: string): Method {
  const method = methods.find((candidate) => candidate.id === id)
  if (method) return method
  const known = methods.map((candidate) => candidate.id).join(', ')
  throw new InputError([
    { path: 'test.method', message: `there is no test method "${id}" (known: ${known})` },
  ])
}
