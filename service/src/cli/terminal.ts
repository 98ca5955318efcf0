import type { Question } from '@draughtbook/shared-calc/log'

/** Where a command writes to; tests collect it. */
export interface Terminal {
  /** Standard output: only what was asked. */
  out(text: string): void
  /** One line on standard error. */
  err(line: string): void
  /** Whether a person watches standard error, so that progress is of use. */
  readonly watched: boolean
  /** Asks a person one thing that a log leaves open; undefined when they give up. Absent where nobody could answer. */
  ask?(question: Question): Promise<string | undefined>
  /** Asks a person to agree. Absent where nobody could answer. */
  agree?(question: string): Promise<boolean>
}

// Control characters could move the cursor or recolour the screen, direction marks could show text in another order.
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const UNSAFE = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g

const escaped = (character: string) => `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`

/** Text from a file, made safe to show: control characters become visible escapes. */
export const shown = (text: string): string => text.replace(UNSAFE, escaped)

/** The same on a single line. */
export const oneLine = (text: string): string => shown(text).replace(/[\n\t]+/g, ' ')
