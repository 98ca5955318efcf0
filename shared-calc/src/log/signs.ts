import type { Direction } from '../contract/record/index.js'

/** A run as logged, as far as its signs go. */
export interface SignedRun {
  readonly direction: Direction | undefined
  readonly pressures: readonly number[]
  /** Mean of the zero-flow values as logged; undefined without any. */
  readonly zero: number | undefined
  /** The pressures are freed of the zero flow already. */
  readonly induced?: boolean
}

/** Factors that turn pressures and zero-flow values as logged into inside minus outside. */
export interface DecidedSign {
  readonly readings: 1 | -1
  readonly zero: 1 | -1
  /** All pressures of the log count outside minus inside. */
  readonly reversed?: true
  /** Of readings without their minus: whether the zero-flow values keep their sign, or the log leaves that open. */
  readonly zeroFlow?: 'kept' | 'open'
}

/** Zero-flow values that differ by less do not tell the signs of two runs apart, Pa. Own choice, no source. */
const TELLING_PA = 0.5

/**
 * How a log counts pressures: inside minus outside, the other way round, or depressurisation without its minus.
 * @param answer - to the question whether zero-flow values had their sign turned like the readings
 * @param saysReversed - the log says that its pressures are outside minus inside
 */
export function decideSigns(
  runs: readonly SignedRun[],
  answer: string | undefined,
  saysReversed = false,
): DecidedSign[] {
  const against = runs.map(
    ({ direction, pressures }) =>
      direction !== undefined && majority(pressures) === -(direction === 'depressurisation' ? -1 : 1),
  )
  const reversed =
    runs.length > 0 &&
    against.every(Boolean) &&
    (saysReversed || runs.some(({ direction }) => direction === 'pressurisation'))
  return runs.map((run, index): DecidedSign => {
    if (!against[index]) return { readings: 1, zero: 1 }
    if (reversed) return { readings: -1, zero: -1, reversed: true }
    return { readings: -1, ...zeroSign(run, runs, answer) }
  })
}

const majority = (values: readonly number[]): number =>
  Math.sign(values.reduce((sum, value) => sum + Math.sign(value), 0))

/** Zero flow keeps its own sign where it shows a minus in both runs alike; else it decides the result and is open. */
function zeroSign(
  run: SignedRun,
  runs: readonly SignedRun[],
  answer: string | undefined,
): Pick<DecidedSign, 'zero' | 'zeroFlow'> {
  if (run.zero === undefined || run.zero === 0 || run.induced || !run.direction) return { zero: 1 }
  if (answer === 'as readings') return { zero: -1 }
  if (answer === 'inside minus outside') return { zero: 1 }
  const other = runs.find((one) => one !== run && one.zero !== undefined)?.zero
  const differ =
    other !== undefined && Math.sign(other) !== Math.sign(run.zero) && Math.abs(run.zero - other) > TELLING_PA
  // Without any minus in the log its zero-flow values may have lost theirs too.
  const unsigned = run.zero > 0 && (other === undefined || other >= 0)
  return { zero: 1, zeroFlow: differ || unsigned ? 'open' : 'kept' }
}
