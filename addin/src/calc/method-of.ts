import { type Method, methods } from '@draughtbook/shared-calc'

/** The method a draft names; undefined where it names none that is known. */
export function methodOf(draft: Readonly<Record<string, unknown>>): Method | undefined {
  const { method } = (draft.test ?? {}) as { method?: unknown }
  return methods.find(({ id }) => id === method)
}
