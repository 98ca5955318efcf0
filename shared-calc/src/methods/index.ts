import { didYouMean, nearest, nearestFirst } from '../contract/nearest.js'
import { InputError } from '../contract/problem.js'
import { astmE779 } from './astm-e779.js'
import { astmE1827OnePoint, astmE1827TwoPoint } from './astm-e1827.js'
import { astmE3158, astmE3158Edition24 } from './astm-e3158.js'
import { cgsb14910 } from './cgsb-149-10.js'
import { en13829 } from './en-13829.js'
import { iso9972 } from './iso-9972.js'
import type { Method } from './method.js'
import { resnetIcc380 } from './resnet-icc-380.js'

export type { Method, MethodLimits } from './method.js'

/** Every test method the tool can follow. */
export const methods: readonly Method[] = [
  iso9972,
  en13829,
  astmE779,
  astmE1827OnePoint,
  astmE1827TwoPoint,
  cgsb14910,
  resnetIcc380,
  astmE3158,
  astmE3158Edition24,
]

/** What is wrong with an id that no method has, and the ids there are. */
export function noSuchMethod(id: string): string {
  const known = methods.map((one) => one.id)
  return `there is no test method "${id}"${didYouMean(nearest(id, known)) || '.'} Known methods: ${nearestFirst(id, known)}`
}

/** The method with an id. Throws InputError naming `test.method` and the methods there are. */
export function methodById(id: string): Method {
  const method = methods.find((candidate) => candidate.id === id)
  if (method) return method
  throw new InputError([{ path: 'test.method', message: noSuchMethod(id) }])
}
