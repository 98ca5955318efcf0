import { buildingFields, conditionsFields } from '../../fields.js'
import { Fields, stillNeeded } from '../../form/fields.js'
import { Proposal } from '../proposal/proposal.js'
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

/** An open log: what it holds is read and shown first. */
export const logSection: Section = {
  id: 'log',
  title: 'The log',
  steps: ['site'],
  fold: 'always',
  shown: ({ store }) => store.host.hasWorkbook,
  Body: Proposal,
}
