import type { Command } from 'commander'
import type { Terminal } from './terminal.js'

/** Exit codes of the contract. */
export const DONE = 0
export const DIFFERENT = 1
export const UNREADABLE = 2

/** What a command gets besides its arguments. */
export interface Surroundings {
  readonly terminal: Terminal
  /** Says how the run ends, when not with {@link DONE}. */
  end(code: number): void
}

/** Gives a command its options and what it does. A new command is one file with such a function and one row in commands.ts. */
export type AddCommand = (command: Command, surroundings: Surroundings) => void
