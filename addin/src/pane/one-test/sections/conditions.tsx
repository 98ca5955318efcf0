import { conditionsFields } from '../../fields.js'
import { Fields, stillNeeded } from '../../form/fields.js'
import type { Section } from '../section.js'

export const conditionsSection: Section = {
  id: 'conditions',
  title: 'Conditions',
  steps: ['site'],
  holds: ['conditions'],
  fold: 'open',
  summary: ({ entries }) => stillNeeded(conditionsFields, entries),
  Body: (props) => <Fields {...props} fields={conditionsFields} />,
}
