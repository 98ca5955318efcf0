import { buildingFields } from '../../fields.js'
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
