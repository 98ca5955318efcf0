import { visible } from '@draughtbook/shared-calc'
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

/** Text from a file on a single line, made safe to show. */
export const oneLine = (text: string): string => visible(text).replace(/[\n\t]+/g, ' ')
