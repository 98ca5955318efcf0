import { placeOf } from './step.js'
import type { TestStore } from './store.js'

/** Leads to where a field of the record is asked for, or to the findings. */
export function leadTo(store: TestStore, path: string): void {
  const { step } = store.state
  const findings = step === 'before' ? 'site' : step
  store.lead(path === 'findings' ? findings : (placeOf(path)?.step ?? step), path)
}
