import { useEffect, useState } from 'preact/hooks'
import { type Field, ownTargetFields } from '../../fields.js'
import { Fields } from '../../form/fields.js'
import type { Section, SectionProps } from '../section.js'

/** A published target, or one of the user's own; never both. */
function Target(props: SectionProps) {
  const [presets, setPresets] = useState<readonly (readonly [string, string])[]>([])
  useEffect(() => {
    void import('../../../calc/choices.js').then(({ presetChoices }) => setPresets(presetChoices()))
  }, [])
  const { entries } = props.state
  const chosen = entries.fields['target.preset']
  const own = Object.keys(entries.fields).some(
    (path) => path.startsWith('target.') && path !== 'target.preset',
  )
  const preset: Field = { path: 'target.preset', label: 'Target', kind: 'choice', options: presets }
  return (
    <>
      {own ? null : <Fields {...props} fields={[preset]} />}
      {chosen ? (
        <p class="hint">Local codes decide: check the edition in force where the building stands.</p>
      ) : (
        <details class="sub" open={own}>
          <summary>A limit of your own</summary>
          <Fields {...props} fields={ownTargetFields} />
        </details>
      )}
    </>
  )
}

export const targetSection: Section = {
  id: 'target',
  title: 'Target',
  fold: 'open',
  summary: ({ evaluation }) => evaluation?.verdict.target?.label ?? '',
  Body: Target,
}
