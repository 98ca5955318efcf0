import type { Finding } from '@draughtbook/shared-calc'
import { count } from './number-text.js'

const GROUPS = [
  { severity: 'invalidates', title: 'Invalidates the test' },
  { severity: 'caution', title: 'Caution' },
  { severity: 'note', title: 'Notes' },
] as const

/** Findings by severity, each with its place, clause and what to do. */
export function findingsText(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Findings   No problems found.'
  const numbers = GROUPS.map(({ severity }) => findings.filter((one) => one.severity === severity).length)
  const [invalidating = 0, cautions = 0, notes = 0] = numbers
  const total = `Findings   ${invalidating === 0 ? 'none invalidates' : `${invalidating} ${invalidating === 1 ? 'invalidates' : 'invalidate'}`}, ${count(cautions, 'caution')}, ${count(notes, 'note')}`
  const groups = GROUPS.flatMap(({ severity, title }) => {
    const own = findings.filter((one) => one.severity === severity)
    return own.length === 0 ? [] : [`  ${title}`, ...own.flatMap(findingLines)]
  })
  return [total, ...groups].join('\n')
}

function findingLines({ message, where, cells, clause, provenance, remedy }: Finding): string[] {
  const places = (cells?.length ? cells : where).slice(0, 8).join(', ')
  const more = (cells?.length ? cells : where).length > 8 ? ' …' : ''
  const known = [clause, provenance === clause ? undefined : provenance].filter(Boolean).join(', ')
  const source = known ? ` [${known}]` : ''
  return [
    `  - ${message}${source}`,
    ...(places ? [`      where: ${places}${more}`] : []),
    ...(remedy ? [`      what to do: ${remedy}`] : []),
  ]
}
