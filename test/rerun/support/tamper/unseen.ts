import type { Tampering } from './landmarks'

/** Left to a program that saves the file: nothing of it is seen, and it changes no figure. */
export const unseen = { unseen: true } as const

export interface HiddenChange extends Tampering {
  readonly unseen?: true
}
