import type { Interpretation, Use } from '@draughtbook/shared-calc/log'
import { quoted } from '../../input/quoted.js'

/** A log as it was understood: its tests, every column and block with what became of it, and what is open. */
export function understoodText({ tests, uses, questions, problems, findings }: Interpretation): string {
  const used = uses.filter(({ usedAs }) => usedAs)
  const ignored = unique(uses.filter(({ ignoredBecause }) => ignoredBecause))
  return [
    tests.length === 1 ? 'One test' : tests.length === 0 ? 'No test' : `${tests.length} tests`,
    ...tests.map(
      ({ key, name, directions }) =>
        `  ${name}${name === key || tests.length === 1 ? '' : ` (test ${key})`}: ${directions.join(' and ') || 'not complete yet'}`,
    ),
    ...(used.length > 0 ? ['Used'] : []),
    ...unique(used).map(
      ({ cells, heading, usedAs, reason }) =>
        `  ${cells}  ${heading} → ${usedAs}${reason ? ` (${reason})` : ''}`,
    ),
    ...(ignored.length > 0
      ? [
          'Left out',
          ...ignored.map(({ cells, heading, ignoredBecause }) => `  ${cells}  ${heading}: ${ignoredBecause}`),
        ]
      : []),
    ...(questions.length > 0
      ? [
          'To answer',
          ...questions.map(
            ({ path, text, choices }) =>
              `  ${text}\n      --set ${path}=${choices.map(({ value }) => quoted(value)).join(', or ') || '…'}`,
          ),
        ]
      : []),
    ...(findings.length > 0
      ? [
          'Findings',
          ...findings.map(({ cells = [], message }) => `  ${[...new Set(cells), message].join('  ')}`),
        ]
      : []),
    ...problems.map(({ message }) => `Problem  ${message}`),
  ].join('\n')
}

function unique(uses: readonly Use[]): Use[] {
  const found = new Map<string, Use>()
  for (const use of uses) found.set(`${use.cells}|${use.usedAs}|${use.ignoredBecause}`, use)
  return [...found.values()]
}
