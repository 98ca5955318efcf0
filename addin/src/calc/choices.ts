import { methods, targetPresets } from '@draughtbook/shared-calc'

export const methodChoices = (): [string, string][] => methods.map(({ id, title }) => [id, title])

const SYMBOLS: Record<string, string> = {
  n50: 'n50',
  qE50: 'qE50',
  qF50: 'qF50',
  q50: 'q50',
  n_pr: 'n',
  qE_pr: 'qE',
  qF_pr: 'qF',
  q_pr: 'q',
}

/** Presets with their limits in words, as in `Passive house, new: n50 ≤ 0.6`. */
export const presetChoices = (): [string, string][] =>
  targetPresets.map(({ id, label, limits }) => {
    const [first] = limits
    const at = first && first.referencePressure_Pa !== 50 ? ` at ${first.referencePressure_Pa} Pa` : ''
    return [
      id,
      first ? `${label}: ${SYMBOLS[first.quantity] ?? first.quantity} ≤ ${first.limit}${at}` : label,
    ]
  })
