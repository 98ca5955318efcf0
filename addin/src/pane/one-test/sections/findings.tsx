import { cited, counted, type Finding } from '@draughtbook/shared-calc'
import { drawnOnChange } from '../../drawn-on-change.js'
import { labelOf } from '../../fields.js'
import { withMinus } from '../../figures.js'
import { MarkToggle } from '../mark-toggle.js'
import type { Section, SectionProps } from '../section.js'

const SHAPE: Record<Finding['severity'], string> = { invalidates: '■', caution: '▲', note: '●' }

function Findings({ store, state }: SectionProps) {
  const findings = state.result?.findings ?? []
  return (
    <>
      <MarkToggle store={store} state={state} />
      {findings.length === 0 ? <p class="hint">No problems found so far.</p> : null}
      <ul class="findings">
        {findings.map((finding) => (
          <FindingRow key={keyOf(finding)} finding={finding} store={store} />
        ))}
      </ul>
    </>
  )
}

const keyOf = ({ rule, message, where, cells }: Finding): string =>
  `${rule}${message}${where.join()}${cells?.join() ?? ''}`

/** Every result brings its findings anew; most of them say the same as before. */
const FindingRow = drawnOnChange(
  ({ finding, store }: { finding: Finding; store: SectionProps['store'] }) => (
    <li class={finding.severity} data-rule={finding.rule}>
      <p class="what">
        <span class="shape" aria-hidden="true">
          {SHAPE[finding.severity]}
        </span>
        <b>{finding.severity}</b> {finding.message}
      </p>
      <p class="places">
        {places(finding).map(({ text, cell }) =>
          cell === undefined ? (
            <span key={text}>{text}</span>
          ) : (
            <button
              type="button"
              class="link"
              key={text}
              aria-label={`Go to ${cell}`}
              onClick={() => void store.attempt(() => store.host.jump(cell))}
            >
              {text}
            </button>
          ),
        )}
        {finding.value !== undefined && finding.limit !== undefined ? (
          <span>
            {shortest(finding.value)} against {shortest(finding.limit)}
          </span>
        ) : null}
        {finding.clause ? <span class="clause">{cited(finding)}</span> : null}
      </p>
      {finding.remedy ? <p class="remedy">{finding.remedy}</p> : null}
    </li>
  ),
  ({ finding, store }) => [store, JSON.stringify(finding)],
)

/** Cells where there are any, else the names of the fields; long lists are cut, and said so. */
function places({ cells = [], where }: Finding): { text: string; cell?: string }[] {
  const all =
    cells.length > 0
      ? cells.map((cell) => ({ text: cell, cell }))
      : [...new Set(where.map(labelOf))].map((text) => ({ text }))
  return all.length > 8 ? [...all.slice(0, 8), { text: `and ${all.length - 8} more` }] : all
}

const shortest = (value: number): string => withMinus(String(Number(value.toPrecision(4))))

export const findingsSection: Section = {
  id: 'findings',
  title: 'Findings',
  steps: ['site', 'result'],
  fold: 'open',
  summary: ({ result }) => {
    const count = (severity: Finding['severity']) =>
      result?.findings.filter((finding) => finding.severity === severity).length ?? 0
    return [
      `${count('invalidates')} invalidating`,
      counted(count('caution'), 'caution'),
      counted(count('note'), 'note'),
    ]
      .filter((text) => !text.startsWith('0 '))
      .join(' · ')
  },
  Body: Findings,
}

/** Findings of a part before there is a record; in a record they stand among its findings. */
export function SiteFindings({ findings, state }: SectionProps & { findings: readonly Finding[] }) {
  const shown = state.result?.record ? [] : findings
  if (shown.length === 0) return null
  return (
    <ul class="findings">
      {shown.map(({ rule, severity, message, remedy }) => (
        <li key={`${rule}${message}`} class={severity} data-site-rule={rule}>
          <p class="said">
            <b>{severity}</b> {message}
          </p>
          {remedy ? <p class="remedy">{remedy}</p> : null}
        </li>
      ))}
    </ul>
  )
}
