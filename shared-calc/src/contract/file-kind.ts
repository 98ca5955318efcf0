import { InputError } from './problem.js'

/** What a JSON file is, by the word of its format. */
const KINDS = {
  record: 'a test record',
  plan: 'a plan',
  'take-off': 'a take-off',
  layout: 'a layout',
  device: 'a flow device of the library',
  gauge: 'a pressure gauge of the library',
  target: 'a target of the library',
  tokens: 'a token file',
} as const

export type FileKind = keyof typeof KINDS

/**
 * Refuses input that says it is something else: one message instead of one for each field that does not fit.
 * @throws InputError at `format`
 */
export function refuseOtherKind(input: unknown, wanted: FileKind): void {
  if (typeof input !== 'object' || input === null || !('format' in input)) return
  const { format } = input
  const kind = typeof format === 'string' ? /^draughtbook\/([a-z-]{1,20})@\d/.exec(format)?.[1] : undefined
  if (kind === undefined || kind === wanted || !Object.hasOwn(KINDS, kind)) return
  throw new InputError([
    { path: 'format', message: `this is ${KINDS[kind as FileKind]}, not ${KINDS[wanted]}` },
  ])
}
