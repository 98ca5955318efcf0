import { practiceSource, preparationClause } from '../sources.js'
import { capital, listed, quoted } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** How the building was prepared, and the cautions before the fan is switched on. */
export const preparationTexts = {
  'preparation-departs': {
    severity: 'caution',
    message: ({
      opening,
      state,
      method,
      asked,
    }: {
      opening: string
      state: string
      method: string
      asked: string
    }) => `"${opening}" was logged as ${state}. ${capital(method)} requires: ${asked}.`,
    remedy: 'Correct it and test again, or explain the departure in the report.',
  },
  'preparation-blank': {
    severity: 'note',
    source: preparationClause,
    message: ({ kinds }: { kinds: readonly string[] }) => `No state was logged for: ${listed(kinds)}.`,
    remedy: 'Log the state of each, or "not present".',
  },
  'preparation-purpose': {
    severity: 'caution',
    source: preparationClause,
    message: 'Preparation method 3 is for a stated purpose, but no purpose was logged.',
    remedy: 'State the code or purpose that requires this preparation.',
  },
  'caution-unanswered': {
    severity: 'caution',
    source: practiceSource,
    message: ({ cautions }: { cautions: readonly string[] }) =>
      `The tester has not acknowledged the ${cautions.length === 1 ? 'caution' : 'cautions'} ${listed(cautions.map(quoted))}.`,
    /** Long on purpose: people can be hurt, so every caution is given in full. */
    remedy: ({ texts }: { texts: readonly string[] }) =>
      `Before you switch on the fan: ${texts.join(' ')} Local codes and licensed practice decide.`,
  },
  'caution-contradicted': {
    severity: 'caution',
    source: practiceSource,
    message: ({ opening }: { opening: string }) =>
      `Fuel-burning appliances are marked "does not apply", but "${opening}" is present.`,
    remedy:
      'Have a competent person shut appliances down before the test. A fan can draw carbon monoxide into rooms.',
  },
} as const satisfies FindingTexts
