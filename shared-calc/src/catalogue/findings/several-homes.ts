import { counted, listed } from '../words.js'
import type { RemarkTexts } from './finding-text.js'
import { saying } from './remark.js'

/** Homes that are named at most. */
const MOST_NAMED = 5

/** What is said about several homes of one building together. */
export const homesTexts = {
  'home-altered': {
    severity: 'invalidates',
    message: ({ file, altered }: { file: string; altered: string }) => `${file}: ${altered}`,
    remedy: 'Find out what was changed, or use the workbook as issued.',
  },
  'homes-not-valid': {
    severity: 'invalidates',
    message: ({ count }: { count: number }) => `${counted(count, 'test is', 'tests are')} not valid.`,
    remedy: ({ count }: { count: number }) =>
      count === 1 ? 'Repeat it, or leave its home out.' : 'Repeat each of them, or leave its home out.',
  },
  'homes-twice': {
    severity: 'caution',
    message: ({ names }: { names: readonly string[] }) =>
      `There is more than one test of ${listed(names.length > MOST_NAMED ? [...names.slice(0, MOST_NAMED), `${names.length - MOST_NAMED} more homes`] : names)}. Each counts as a home of its own.`,
    remedy: 'Give one test of each home: the one that counts.',
  },
  'homes-rule/of-target': {
    severity: 'note',
    message: 'The homes are combined by the rule of the target.',
  },
  'homes-rule/none': {
    severity: 'note',
    message: 'This target has no rule for several homes, so each home must meet it.',
    remedy: 'If your scheme has a rule, choose it.',
  },
  'homes-sampled': {
    severity: 'note',
    message: 'Not every home was tested, so the result is multiplied by the sampling factor of the scheme.',
  },
  'homes-guarded/some': {
    severity: 'caution',
    message: ({ guarded, homes }: { guarded: number; homes: number }) =>
      `${guarded} of ${homes} homes ${guarded === 1 ? 'was' : 'were'} tested with guarded adjoining spaces. The results of the others include leaks to their neighbours.`,
    remedy: 'State this in the report, or test the others with guarded adjoining spaces.',
  },
  'homes-guarded/each': {
    severity: 'note',
    message: ({ logged }: { logged: boolean }) =>
      `${notGuarded(logged)} The results include leaks to the homes next door.`,
  },
  'homes-guarded/summed': {
    severity: 'caution',
    message: ({ logged }: { logged: boolean }) =>
      `${notGuarded(logged)} Leaks between two homes count in both tests, so the sum is higher than the leakage of the building to outdoors.`,
    remedy: 'State this in the report, or test with guarded adjoining spaces.',
  },
  'homes-instruments': {
    severity: 'note',
    message: ({ count }: { count: number }) =>
      `${counted(count, 'test does', 'tests do')} not name the pressure gauge or the flow device. The same instruments are assumed for all.`,
    remedy: 'Log the names or serial numbers of the instruments.',
  },
  'homes-sample/unknown': {
    severity: 'invalidates',
    message: ({ tested, homes }: { tested: number; homes: number }) =>
      `${tested} of ${homes} homes were tested, but this target states no sample size.`,
    remedy: 'Enter the sample size of your scheme.',
  },
  'homes-sample/too-few': {
    severity: 'invalidates',
    message: ({ missing, needed, homes }: { missing: number; needed: number; homes: number }) =>
      `${counted(missing, 'more home', 'more homes')} must be tested: ${needed} of ${homes} are required.`,
    remedy: 'Test more homes, then combine all tests again.',
  },
} as const satisfies RemarkTexts

function notGuarded(logged: boolean): string {
  return logged
    ? 'Adjoining spaces were not guarded.'
    : 'The logs do not say whether adjoining spaces were guarded.'
}

export const homesText = saying(homesTexts)

/** Why the test of a stage is left out, or stops the work, though its figures are there. */
export const stageReasons = {
  noStage: 'the test does not state its stage; state it in the log, or evaluate the log with --stage',
  repeated: (file: string) => `the plot was tested again at this stage (${file})`,
  notValid: 'the test is not valid',
} as const
