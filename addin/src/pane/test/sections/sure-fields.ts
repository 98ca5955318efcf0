import { defaultUncertainties } from '@draughtbook/shared-calc'
import type { Field } from '../../fields.js'

/** Entries of the budget: each shows the default it has while empty. Shares are fractions, as in the record. */
export const sureFields: readonly Field[] = Object.entries(defaultUncertainties).map(
  ([input, { term, value, unit }]) => ({
    path: `uncertainty.${input}`,
    label: `${term.charAt(0).toUpperCase()}${term.slice(1)}`,
    unit: unit === '1' ? 'fraction or %' : unit,
    kind: 'number',
    placeholder: String(Number(value.toPrecision(3))),
  }),
)
