import { practiceSource } from '../sources.js'
import { listed, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** Whether the test was made as its target asks. */
export const targetTexts = {
  'target-preparation/not-logged': {
    severity: 'caution',
    message: ({ target, accepted }: { target: string; accepted: readonly string[] }) =>
      `The target "${target}" asks for preparation by ${listed(accepted, 'or')}. The preparation was not logged, so this was not checked.`,
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
      `The building was prepared by ${preparation}, but the target "${target}" asks for ${listed(accepted, 'or')}.`,
    remedy:
      'Prepare the building as the target asks and test again, or choose the target that the test was made for.',
  },
  'target-adjoining-spaces/not-logged': {
    severity: 'caution',
    message: ({ target, accepted }: { target: string; accepted: readonly string[] }) =>
      `The limits of "${target}" are for ${listed(accepted, 'or')} tests. The log does not say whether adjoining spaces were held at the same pressure.`,
    remedy: 'Enter adjoiningSpaces "guarded" or "unguarded".',
  },
  'target-adjoining-spaces/other': {
    severity: 'caution',
    message: ({ target, accepted, found }: { target: string; accepted: readonly string[]; found: string }) =>
      `The test was ${found}, but the limits of "${target}" are for ${listed(accepted, 'or')} tests.`,
    remedy: 'Choose the target for the way the test was made.',
  },
  'target-area/stand-in': {
    severity: 'invalidates',
    message: ({ target, area }: { target: string; area: string }) =>
      `The limit of "${target}" is per ${area}, which was not entered. The envelope area is used instead. It is larger, so the result looks better than it is.`,
    remedy: 'Enter lossArea_m2, the loss area without the lowest floor.',
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
      `One limit of "${target}" is enough. ${judged} is the one kept best and decides. Not judged: ${others.map(({ quantity, value, limit }) => `${quantity} ${plain(value, 3)} (limit ${plain(limit, 3)})`).join(', ')}.`,
    remedy: 'Check with the authority that one limit is enough.',
  },
} as const satisfies FindingTexts
