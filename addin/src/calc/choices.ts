import { methods, targetPresets, unitText } from '@draughtbook/shared-calc'

export const methodChoices = (): [string, string][] => methods.map(({ id, title }) => [id, title])

/** Quantities as the list shows them: the reference pressure is beside the limit where it is not 50 Pa. */
const shown = (quantity: string): string => quantity.replace(/(?:10|_pr)$/, '')

/** Presets with their limits in words, as in `Passive house, new: n50 ≤ 0.6`, in the unit that the scheme prints. */
export const presetChoices = (): [string, string][] =>
  targetPresets.map(({ id, label, limits, satisfiedBy }) => {
    const texts = limits
      .filter(({ when }) => when?.above_m3 === undefined && when?.atLeast_m3 === undefined)
      .map(({ quantity, limit, printed, referencePressure_Pa: pressure }) => {
        const at = pressure === 50 ? '' : ` at ${pressure} Pa`
        const value = printed ? `${printed.value} ${unitText(printed.unit)}` : limit
        return `${shown(quantity)} ≤ ${value}${at}`
      })
    return [id, `${label}: ${texts.join(satisfiedBy === 'any' ? ' or ' : ' and ')}`]
  })
