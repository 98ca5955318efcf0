import { type Field, testFields } from '../../fields.js'
import { Fields, stillNeeded, useChoices } from '../../form/fields.js'
import type { Section, SectionProps } from '../section.js'

const USUAL = [['iso-9972:2015', 'ISO 9972:2015']] as const
const loadMethods = () => import('../../../calc/choices.js').then(({ methodChoices }) => methodChoices())

/** The methods come from the calculation, which is loaded behind the pane: the form shows the one chosen meanwhile. */
function TestDetails(props: SectionProps) {
  const { choices, ask } = useChoices(loadMethods, props.state.result !== undefined, USUAL)
  const method: Field = {
    path: 'test.method',
    label: 'Test method',
    kind: 'choice',
    options: choices,
    needed: true,
  }
  return (
    <div onFocusIn={ask} onPointerEnter={ask}>
      <Fields {...props} fields={[...testFields.slice(0, 1), method, ...testFields.slice(1)]} />
    </div>
  )
}

export const testDetailsSection: Section = {
  id: 'details',
  title: 'Test',
  steps: ['before'],
  holds: ['test'],
  fold: 'open',
  summary: ({ entries }) => stillNeeded(testFields, entries),
  Body: TestDetails,
}
