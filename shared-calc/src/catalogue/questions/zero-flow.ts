import type { Direction } from '../../contract/record/index.js'
import { listed, quoted, withMinus } from '../words.js'
import { type Asked, cellName, runOf } from './asked.js'

/** Zero-flow pressures as they are shown; they are answered with the hyphen of a keyboard. */
const printedList = (values: readonly string[]): string => values.map(withMinus).join(', ')

/** Which zero-flow pressures belong to a run. */
export const zeroFlowQuestions = {
  zeroFlowLabels: ({ labels }: { labels: readonly string[] }): Asked => ({
    text: `No zero-flow pressures were found. Are these the zero-flow pressures: ${listed(labels.map(quoted))}?`,
    choices: [
      { value: 'zero flow', label: 'yes: before and after the readings, in this order' },
      { value: 'something else', label: 'no: the log has none' },
    ],
  }),
  zeroFlowMissing: ({
    direction,
    cell,
    label,
  }: {
    direction: Direction | undefined
    cell: string
    label: string
  }): Asked => ({
    text: `Cell ${cellName(cell)} says ${quoted(label)}, but no zero-flow pressures were found for ${runOf(direction)}. What were they, in Pa, before and after the readings?`,
    choices: [{ value: 'none', label: 'none: not measured, or already subtracted' }],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowUnused: ({
    direction,
    labels,
    others,
    instead,
    both,
    read,
  }: {
    direction: Direction | undefined
    labels: readonly string[]
    /** The values that no run took, with their units. */
    others: readonly string[]
    /** The zero-flow pressures of the run with these in their place. */
    instead: readonly string[]
    /** Those read and these together, where they may be before and after. */
    both: readonly string[] | undefined
    /** Those that were read for the run; undefined where it has none. */
    read: readonly string[] | undefined
  }): Asked => ({
    text: `The log also has ${listed(labels.map(quoted))} (${listed(others.map(withMinus))}). Which are the zero-flow pressures of ${runOf(direction)}?`,
    choices: [
      read ? { value: 'as read', label: printedList(read) } : { value: 'none', label: 'it has none' },
      { value: instead.join(', '), label: printedList(instead) },
      ...(both ? [{ value: both.join(', '), label: printedList(both) }] : []),
    ],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowInHeading: ({
    direction,
    heading,
    read,
  }: {
    direction: Direction | undefined
    heading: string
    /** The zero-flow pressures that were read for the run. */
    read: readonly string[]
  }): Asked => ({
    text: `The pressures of ${runOf(direction)} are headed ${quoted(heading)}. Are the zero-flow pressures already subtracted?`,
    choices: [
      { value: 'as read', label: `no: subtract ${printedList(read)}` },
      { value: 'none', label: 'yes: they are subtracted' },
    ],
    noneLikelier: true,
  }),
  zeroFlowUnstored: ({
    direction,
    cells,
    read,
  }: {
    direction: Direction | undefined
    cells: readonly string[]
    /** What could be read of it. */
    read: readonly string[]
  }): Asked => ({
    text: `The zero-flow pressures in ${listed(cells.map(cellName))} are formulas without results. Open the log in a spreadsheet program and save it, or answer here: what are those of ${runOf(direction)}, in Pa?`,
    choices: [
      read.length > 0
        ? { value: 'as read', label: `only ${printedList(read)}` }
        : { value: 'none', label: 'it has none' },
    ],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowRival: ({
    direction,
    cells,
    read,
    instead,
  }: {
    direction: Direction | undefined
    cells: readonly string[]
    /** The zero-flow pressures as they were read for the run. */
    read: readonly string[]
    /** Those it would have if both runs exchanged theirs. */
    instead: readonly string[]
  }): Asked => ({
    text: `The log does not say which run its zero-flow pressures in ${listed(cells.map(cellName))} belong to. Which are those of ${runOf(direction)}?`,
    choices: [
      { value: 'as read', label: printedList(read) },
      { value: instead.join(', '), label: printedList(instead) },
    ],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowOneSided: ({
    direction,
    read,
    lacks,
  }: {
    direction: Direction | undefined
    read: readonly string[]
    lacks: 'before' | 'after'
  }): Asked => ({
    text: `No zero-flow pressure ${lacks} the readings was found for ${runOf(direction)}, but the other run has one. What are the zero-flow pressures of ${runOf(direction)}, in Pa?`,
    choices: [{ value: 'as read', label: `only ${printedList(read)}` }],
    noneLikelier: true,
    example: '-1.2 before, -0.8 after',
  }),
  zeroFlowSign: ({ direction, mean }: { direction: Direction; mean: string }): Asked => ({
    text: `The pressures of ${direction} are logged without a minus sign. Are its zero-flow pressures (mean ${mean} Pa) inside minus outside, or was their sign changed too?`,
    choices: [
      {
        value: 'as readings',
        label: 'sign changed, like the readings',
        reason: 'the zero-flow pressures of the other run have the opposite sign',
      },
      { value: 'inside minus outside', label: 'inside minus outside' },
    ],
  }),
} as const
