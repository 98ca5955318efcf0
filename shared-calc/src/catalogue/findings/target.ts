import { practiceSource } from '../sources.js'
import { listed, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** Whether the test meets the conditions of its target. */
export const targetTexts = {
  'target-preparation/not-logged': {
    severity: 'caution',
    message: ({ target, accepted }: { target: string; accepted: readonly string[] }) =>
      `The target "${target}" requires preparation by ${listed(accepted, 'or')}. The preparation was not logged, so this was not checked.`,
    remedy: 'Log the preparation method.',
  },
  'target-preparation/other': {
    severity: 'caution',
    message: ({
      target,
      accepted,
      preparation,
    }: {
      target: string
      accepted: readonly string[]
      preparation: string
    }) =>
      `The building was prepared by ${preparation}, but the target "${target}" requires ${listed(accepted, 'or')}.`,
    remedy:
      'Prepare the building as the target requires and test again, or choose the target that applies to this test.',
  },
  'target-adjoining-spaces/not-logged': {
    severity: 'caution',
    message: ({ target, accepted }: { target: string; accepted: readonly string[] }) =>
      `The limits of "${target}" apply to ${listed(accepted, 'or')} tests. It is not stated whether adjoining spaces were guarded (kept at the same pressure).`,
    remedy: 'State whether the adjoining spaces were guarded or unguarded.',
  },
  'target-adjoining-spaces/other': {
    severity: 'caution',
    message: ({ target, accepted, found }: { target: string; accepted: readonly string[]; found: string }) =>
      `Adjoining spaces were ${found} in this test, but the limits of "${target}" apply to ${listed(accepted, 'or')} tests.`,
    remedy: 'Choose a target that applies to this test.',
  },
  'target-area/stand-in': {
    severity: 'invalidates',
    message: ({ target, area }: { target: string; area: string }) =>
      `The limit of "${target}" is per ${area}, which was not entered. The envelope area is used instead. It is larger, so the result looks better than it is.`,
    remedy: 'Enter the loss area without the lowest floor.',
  },
  'target-alternatives': {
    severity: 'note',
    source: practiceSource,
    message: ({
      target,
      judged,
      others,
    }: {
      target: string
      judged: string
      others: readonly { quantity: string; value: number; limit: number }[]
    }) =>
      `Meeting one limit of "${target}" is enough. ${judged} has the largest margin, so it decides the verdict. Other limits: ${others.map(({ quantity, value, limit }) => `${quantity} ${plain(value, 3)} (limit ${plain(limit, 3)})`).join(', ')}.`,
    remedy: 'Confirm with the authority that one limit is enough.',
  },
} as const satisfies FindingTexts
