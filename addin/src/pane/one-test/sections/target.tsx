import { useMemo } from 'preact/hooks'
import { type Field, ownTargetFields } from '../../fields.js'
import { Fold } from '../../fold.js'
import { Fields, useChoices } from '../../form/fields.js'
import type { Section, SectionProps } from '../section.js'

const loadPresets = () => import('../../../calc/choices.js').then(({ presetChoices }) => presetChoices())

/** A published target, or one of the user's own; never both. */
function Target(props: SectionProps) {
  const { choices: presets, ask } = useChoices(loadPresets, props.state.result !== undefined, [])
  const { entries } = props.state
  const chosen = entries.fields['target.preset']
  const own = Object.keys(entries.fields).some(
    (path) => path.startsWith('target.') && path !== 'target.preset',
  )
  const preset = useMemo<Field>(
    () => ({ path: 'target.preset', label: 'Target', kind: 'choice', options: presets }),
    [presets],
  )
  return (
    <div onFocusIn={ask} onPointerEnter={ask}>
      {own ? null : <Fields {...props} fields={[preset]} />}
      {chosen ? (
        <p class="hint">Local codes decide: check the edition in force where the building stands.</p>
      ) : (
        <Fold class="sub" open={own} summary="A limit of your own">
          <Fields {...props} fields={ownTargetFields} />
        </Fold>
      )}
    </div>
  )
}

export const targetSection: Section = {
  id: 'target',
  title: 'Target',
  steps: ['before'],
  holds: ['target'],
  fold: 'open',
  summary: ({ evaluation }) => evaluation?.verdict.target?.label ?? '',
  Body: Target,
}
