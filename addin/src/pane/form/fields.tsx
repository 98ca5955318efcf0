import type { Field } from '../fields.js'
import type { SectionProps } from '../one-test/section.js'
import { FieldRow } from './field-row.js'

export function Fields({ fields, store, state }: SectionProps & { fields: readonly Field[] }) {
  return (
    <div class="fields">
      {fields.map((field) => (
        <FieldRow key={field.path} field={field} store={store} state={state} />
      ))}
    </div>
  )
}

/** How many of the needed fields are still empty, for a folded section's title. */
export function stillNeeded(fields: readonly Field[], entries: SectionProps['state']['entries']): string {
  const missing = fields.filter(({ needed, path }) => needed && !entries.fields[path])
  return missing.length === 0 ? '' : `needed: ${missing.map(({ label }) => label.toLowerCase()).join(', ')}`
}
