import { useEffect, useState } from 'preact/hooks'
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

type Choices = readonly (readonly [value: string, label: string])[]

/**
 * Choices that come from the calculation, which is fetched behind the pane.
 * @param ready whether the calculation is there anyway; else the choices are fetched when `ask` is called
 */
export function useChoices(
  load: () => Promise<Choices>,
  ready: boolean,
  atFirst: Choices,
): { choices: Choices; ask: () => void } {
  const [choices, setChoices] = useState(atFirst)
  const [asked, setAsked] = useState(false)
  useEffect(() => {
    if (ready || asked) void load().then(setChoices)
  }, [ready, asked])
  return { choices, ask: () => setAsked(true) }
}
