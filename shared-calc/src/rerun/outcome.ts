import type { Difference, RerunTest } from './report.js'

export interface OutcomeFacts {
  /** The version it was issued under, where that is not the current one. */
  readonly olderVersion?: string
  /** Why its signature is not accepted. */
  readonly refused?: string
  /** Every part of the file is as issued. */
  readonly asIssued?: boolean
  /** The program that saved it again; empty where it does not say. */
  readonly savedBy?: string
  /** What is said of its signature where that does not prove who issued it. */
  readonly unproven?: string
}

/** The one outcome for what was found, with the reason. */
export function outcomeOf(
  differences: readonly Difference[],
  { olderVersion, refused, asIssued = false, savedBy, unproven }: OutcomeFacts = {},
): Pick<RerunTest, 'outcome' | 'why'> {
  const real = differences.filter(({ rounding }) => !rounding)
  const inputs = real.filter(isInput)
  const also = refused === undefined ? '' : `; ${refused}`
  if (inputs.length > 0)
    return {
      outcome: 'inputs changed after issue',
      why: `${count(inputs.length, 'input')} changed after issue: ${names(inputs)}${others(real.length - inputs.length)}${also}`,
    }
  if (real.length > 0)
    return { outcome: 'differs', why: `${count(real.length, 'difference')}: ${names(real)}${also}` }
  if (refused !== undefined) return { outcome: 'signature not accepted', why: refused }
  const unsigned = unproven === undefined ? '' : `; ${unproven}`
  const saved = savedBy === undefined ? undefined : `saved again${savedBy && ` by ${savedBy}`}`
  if (olderVersion !== undefined)
    return {
      outcome: 'older calculation version',
      why: `agrees with version ${olderVersion}, under which it was issued${saved === undefined ? '' : `; ${saved}`}${unsigned}`,
    }
  if (saved !== undefined)
    return { outcome: 'saved again', why: `${saved}; every figure and everything visible agrees${unsigned}` }
  if (asIssued)
    return {
      outcome: 'exactly as issued',
      why: `every part of the file is as it was issued${digits(differences.length)}${unsigned}`,
    }
  return {
    outcome: 'agrees',
    why:
      differences.length > 0
        ? `${count(differences.length, 'figure')} ${differences.length === 1 ? 'differs' : 'differ'} by rounding only`
        : `every figure and everything visible agrees${unsigned}`,
  }
}

/** Said where the file was issued by another engine, such as a browser: its arithmetic may end in another last digit. */
const digits = (n: number): string =>
  n === 0
    ? ''
    : `; ${count(n, 'number')} ${n === 1 ? 'differs' : 'differ'} in the last digits from the new calculation`

const isInput = ({ kind, label }: Difference): boolean =>
  kind === 'input' || (kind === 'digest' && label.startsWith('digest of the record'))

const count = (n: number, what: string): string => (n === 1 ? `1 ${what}` : `${n} ${what}s`)

const others = (n: number): string => (n > 0 ? `; ${count(n, 'further difference')}` : '')

const NAMED = 3

function names(differences: readonly Difference[]): string {
  const shown = differences.slice(0, NAMED).map(({ label, cell }) => (cell ? `${label} (${cell})` : label))
  return [...shown, ...(differences.length > NAMED ? ['…'] : [])].join(', ')
}
