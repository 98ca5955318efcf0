import type { PlausibleRange } from '../../contract/record/index.js'
import { practiceSource, preparationClause } from '../sources.js'
import { apart, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

const shapeRemedy = 'Check the internal volume and the envelope area.'

/** What is missing about the building, its preparation or its target. */
export const buildingTexts = {
  'volume-basis/not-stated': {
    severity: 'caution',
    message: 'The basis of the internal volume (net or overall internal) was not stated.',
    remedy: 'State whether the volume is net or overall internal.',
  },
  'volume-basis/other-than-target': {
    severity: 'caution',
    message: ({ basis, asked, target }: { basis: string; asked: string; target: string }) =>
      `The volume entered is the ${basis} volume, but the target "${target}" uses the ${asked} volume.`,
    remedy: ({ asked }: { asked: string }) => `Calculate the ${asked} volume and enter it with its basis.`,
  },
  'volume-basis/other-than-method': {
    severity: 'note',
    message: ({ basis, method, usual }: { basis: string; method: string; usual: string }) =>
      `The volume entered is the ${basis} volume; ${method} uses the ${usual} volume.`,
    remedy: 'State the basis in the report.',
  },
  'missing-basis': {
    severity: 'note',
    source: practiceSource,
    message: ({ term, result }: { term: string; result: string }) =>
      `The ${term} was not logged, so the ${result} is not given.`,
    remedy: ({ term }: { term: string }) => `Enter the ${term} if you need this figure.`,
  },
  'missing-preparation': {
    severity: 'note',
    source: preparationClause,
    message: ({ missing }: { missing: 'both' | 'method' | 'openings' }) =>
      missing === 'both'
        ? 'The preparation method and the state of the openings were not logged.'
        : `The ${missing === 'method' ? 'preparation method' : 'state of the openings'} was not logged.`,
    remedy: ({ missing }: { missing: 'both' | 'method' | 'openings' }) =>
      missing === 'both'
        ? 'Log the preparation method, and what was closed, sealed or left open.'
        : missing === 'method'
          ? 'Log the preparation method.'
          : 'Log what was closed, sealed or left open.',
  },
  'implausible-value': {
    severity: 'caution',
    source: practiceSource,
    message: ({ term, value, unit, lowest, highest }: PlausibleRange & { value: number }) =>
      `The ${term} is ${apart(value, [lowest, highest])} ${unit}, outside the usual range of ${plain(lowest)} to ${plain(highest)} ${unit}.`,
    remedy: 'Check the value and its unit. If it is correct, confirm it in the report.',
  },
  'volume-shape/envelope-small': {
    severity: 'caution',
    source: practiceSource,
    message: ({ envelope, volume, limit }: { envelope: number; volume: number; limit: number }) =>
      `An envelope of ${apart(envelope, [limit], 1)} m² cannot enclose a volume of ${plain(volume, 1)} m³: at least ${apart(limit, [envelope], 1)} m² is needed.`,
    remedy: shapeRemedy,
  },
  'volume-shape/envelope-large': {
    severity: 'caution',
    source: practiceSource,
    message: ({ envelope, volume, limit }: { envelope: number; volume: number; limit: number }) =>
      `An envelope of ${apart(envelope, [limit], 1)} m² is unusually large for a volume of ${plain(volume, 1)} m³ (usual: up to ${apart(limit, [envelope], 1)} m²).`,
    remedy: shapeRemedy,
  },
  'volume-shape/storey-height': {
    severity: 'caution',
    source: practiceSource,
    message: ({ height, lowest, highest }: { height: number; lowest: number; highest: number }) =>
      `The volume divided by the floor area gives a mean height of ${apart(height, [lowest, highest])} m, outside the usual range of ${lowest} to ${highest} m.`,
    remedy: 'Check the internal volume and the floor area.',
  },
  'missing-target': {
    severity: 'note',
    source: practiceSource,
    message: 'No target was set, so there is no pass or fail.',
    remedy: 'Set the target that the project must meet.',
  },
} as const satisfies FindingTexts

/** What is odd about the texts of a record. */
export const textTexts = {
  'text-characters': {
    severity: 'note',
    source: practiceSource,
    message:
      'This text contains control characters or others that a workbook cannot store. The workbook shows � for each.',
    remedy: 'Type the text again without them.',
  },
} as const satisfies FindingTexts
