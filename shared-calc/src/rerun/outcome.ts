import type { Difference, RerunTest } from './report.js'

/** The one word for what was found, with the reason. @param olderVersion - the version it was issued under, where that is not the current one */
export function outcomeOf(
  differences: readonly Difference[],
  olderVersion?: string,
): Pick<RerunTest, 'outcome' | 'why'> {
  const real = differences.filter(({ rounding }) => !rounding)
  const inputs = real.filter(isInput)
  if (inputs.length > 0)
    return {
      outcome: 'inputs changed after issue',
      why: `${count(inputs.length, 'input')} changed after issue: ${names(inputs)}${others(real.length - inputs.length)}`,
    }
  if (real.length > 0)
    return { outcome: 'differs', why: `${count(real.length, 'difference')}: ${names(real)}` }
  if (olderVersion !== undefined)
    return {
      outcome: 'older calculation version',
      why: `agrees with version ${olderVersion}, under which it was issued${differences.length > 0 ? ', apart from rounding' : ''}`,
    }
  if (differences.length > 0)
    return {
      outcome: 'rounding only',
      why: `${count(differences.length, 'figure')} ${differences.length === 1 ? 'differs' : 'differ'} by rounding only`,
    }
  return { outcome: 'agrees', why: 'every figure and cell agrees' }
}

const isInput = ({ kind, label }: Difference): boolean =>
  kind === 'input' || (kind === 'digest' && label.startsWith('digest of the record'))

const count = (n: number, what: string): string => (n === 1 ? `1 ${what}` : `${n} ${what}s`)

const others = (n: number): string => (n > 0 ? `; ${count(n, 'further difference')}` : '')

const NAMED = 3

function names(differences: readonly Difference[]): string {
  const shown = differences.slice(0, NAMED).map(({ label, cell }) => (cell ? `${label} (${cell})` : label))
  return [...shown, ...(differences.length > NAMED ? ['…'] : [])].join(', ')
}
