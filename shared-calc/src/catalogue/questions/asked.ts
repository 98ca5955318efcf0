import type { Direction } from '../../contract/record/index.js'

/** A question about a log as it is put. */
export interface Asked {
  /** One question, after a sentence that says why where that helps. */
  readonly text: string
  /** Likely answers, the most likely first; none where a value has to be typed. */
  readonly choices: readonly { readonly value: string; readonly label: string; readonly reason?: string }[]
  /** Nothing makes the first choice likelier than the others, and a wrong one gives a wrong figure: nobody should take it unread. */
  readonly noneLikelier?: true
  /** An example of a typed answer. */
  readonly example?: string
}

/** A question whose answer has to be typed. */
export const typed = (text: string, example: string): Asked => ({ text, choices: [], example })
/** A question with answers of which none is likelier. */
export const oneOf = (text: string, values: readonly string[]): Asked => ({
  text,
  choices: values.map((value) => ({ value, label: value.replace(/^m3\b/, 'm³') })),
  noneLikelier: true,
})
/** The cell of an address with its sheet. */
export const cellName = (cell: string): string => cell.split('!').at(-1) ?? cell

/** "the depressurisation run", or "the run" where its direction is not known. */
export const runOf = (direction: Direction | undefined): string =>
  direction ? `the ${direction} run` : 'the run'
