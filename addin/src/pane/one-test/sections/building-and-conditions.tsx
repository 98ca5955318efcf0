import { buildingFields, conditionsFields } from '../../fields.js'
import { Fields, stillNeeded } from '../../form/fields.js'
import type { Section } from '../section.js'

export const buildingSection: Section = {
  id: 'building',
  title: 'Building',
  steps: ['before'],
  holds: ['building'],
  fold: 'open',
  summary: ({ entries }) => stillNeeded(buildingFields, entries),
  Body: (props) => <Fields {...props} fields={buildingFields} />,
}

export const conditionsSection: Section = {
  id: 'conditions',
  title: 'Conditions',
  steps: ['site'],
  holds: ['conditions'],
  fold: 'open',
  summary: ({ entries }) => stillNeeded(conditionsFields, entries),
  Body: (props) => <Fields {...props} fields={conditionsFields} />,
}
