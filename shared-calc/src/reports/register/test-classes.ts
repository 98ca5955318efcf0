import type { Outcome } from '../../contract/record/index.js'

/**
 * The classes of a register's rows, each row in exactly one, with what they mean. Common practice of offices, no
 * source.
 */
export const testClasses = {
  'first test': 'The first test of a plot at its stage.',
  repeat: 'A test that repeats an earlier one of the plot: the same stage again, or a retest.',
  'retest without its first test':
    'Logged as a retest, but no earlier test of the plot is among the files given. It does not count towards the first-time pass rate.',
  'earlier issue':
    'The same test number, date and readings as another summary, with other content: that one is the reissue and replaces this one.',
  duplicate: 'Exactly the same record as in another file.',
  altered:
    'The summary was changed after it was issued. Its figures are left out and it is included in no total: run Re-run on it.',
} as const

export type TestClass = keyof typeof testClasses

/** Classes that stand for a test made on site; the others are further copies of one, or cannot be trusted. */
export const classesOfTests: readonly TestClass[] = ['first test', 'repeat', 'retest without its first test']

export const isTest = (role: TestClass): boolean => classesOfTests.includes(role)

/** A test is billed once, whatever it came to, unless it is not valid. */
export const isBillable = ({ role, outcome }: { role: TestClass; outcome: Outcome }): boolean =>
  isTest(role) && outcome !== 'not valid'

/** The last test of a plot asks for a retest where it misses its target or is not valid. */
export const asksForRetest = ({ outcome }: { outcome: Outcome }): boolean =>
  outcome === 'misses' || outcome === 'not valid'
