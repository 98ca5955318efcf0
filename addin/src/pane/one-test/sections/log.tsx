import { Proposal } from '../proposal/proposal.js'
import type { Section } from '../section.js'

/** An open log: what it holds is read and shown first. */
export const logSection: Section = {
  id: 'log',
  title: 'The log',
  steps: ['site'],
  fold: 'always',
  shown: ({ store }) => store.host.hasWorkbook,
  Body: Proposal,
}
