import { defaultUncertainties } from '@draughtbook/shared-calc'
import type { Field } from '../../fields.js'

/**
 * Entries of the budget: each shows the default it has while empty. Shares are fractions, as in the record. The labels
 * begin with the u of an uncertainty: a temperature and its uncertainty must not be called the same.
 */
export const sureFields: readonly Field[] = Object.entries(defaultUncertainties).map(
  ([input, { term, value, unit }]) => ({
    path: `uncertainty.${input}`,
    label: input === 'acceptedRisk' ? 'Accepted risk' : `u of ${term}`,
    unit: unit !== '1' ? unit : input === 'assumedExponent' ? '' : '(fraction or %)',
    kind: 'number',
    placeholder: String(Number(value.toPrecision(3))),
  }),
)
