import { cited, counted, type Finding } from '@draughtbook/shared-calc'
import { drawnOnChange } from '../../drawn-on-change.js'
import { labelOf } from '../../fields.js'
import { Said } from '../../said.js'
import { MarkToggle } from '../mark-toggle.js'
import type { Section, SectionProps } from '../section.js'

const SHAPE: Record<Finding['severity'], string> = { invalidates: '■', caution: '▲', note: '●' }

function Findings({ store, state }: SectionProps) {
  const findings = state.result?.findings ?? []
  const { runs = [] } = (state.result?.draft ?? {}) as { runs?: readonly { direction?: string }[] }
  const directions = runs.map(({ direction = '' }) => direction)
  const notes = findings.filter(({ severity }) => severity === 'note')
  const rows = (shown: readonly Finding[]) =>
    shown.length === 0 ? null : (
      <ul class="findings">
        {shown.map((finding) => (
          <FindingRow key={keyOf(finding)} finding={finding} directions={directions} store={store} />
        ))}
      </ul>
    )
  return (
    <>
      <MarkToggle store={store} state={state} />
      {findings.length === 0 ? <p class="hint">No problems found so far.</p> : null}
      {rows(findings.filter(({ severity }) => severity !== 'note'))}
      {notes.length === 0 ? null : (
        // On site what has to be done stands alone; in the result every word counts.
        <details class="sub notes" open={state.step !== 'site'}>
          <summary>Notes</summary>
          {rows(notes)}
        </details>
      )}
    </>
  )
}

const keyOf = ({ rule, message, where, cells }: Finding): string =>
  `${rule}${message}${where.join()}${cells?.join() ?? ''}`

interface FindingRowProps {
  finding: Finding
  /** Of the record's runs. */
  directions: readonly string[]
  store: SectionProps['store']
}

/** Every result brings new findings; most of them say the same as before. */
const FindingRow = drawnOnChange(
  ({ finding, directions, store }: FindingRowProps) => (
    <li class={finding.severity} data-rule={finding.rule}>
      <p class="what">
        <span class="shape" aria-hidden="true">
          {SHAPE[finding.severity]}
        </span>
        <b>{finding.severity}</b> <Said text={finding.message} />
      </p>
      {finding.remedy ? (
        <p class="remedy">
          <Said text={finding.remedy} />
        </p>
      ) : null}
      <p class="places">
        {places(finding, directions).map(({ text, cell }) =>
          cell === undefined ? (
            <span key={text}>
              <Said text={text} />
            </span>
          ) : (
            <button
              type="button"
              class="link"
              key={text}
              aria-label={`Go to ${cell}`}
              onClick={() => void store.attempt(() => store.host.jump(cell))}
            >
              <Said text={text} />
            </button>
          ),
        )}
        {cited(finding) ? <span class="clause">{cited(finding)}</span> : null}
      </p>
    </li>
  ),
  ({ finding, directions, store }) => [store, JSON.stringify([finding, directions])],
)

/** Cells where there are any, else the names of the fields; long lists are cut, and said so. */
function places(
  { cells = [], where }: Finding,
  directions: readonly string[],
): { text: string; cell?: string }[] {
  const all =
    cells.length > 0
      ? cells.map((cell) => ({ text: cell, cell }))
      : [...new Set(where.map((path) => labelOf(path, directions)))].map((text) => ({ text }))
  return all.length > 8 ? [...all.slice(0, 8), { text: `and ${all.length - 8} more` }] : all
}

export const findingsSection: Section = {
  id: 'findings',
  title: 'Findings',
  steps: ['site', 'result'],
  fold: 'open',
  shown: ({ state: { result } }) => result !== undefined,
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
            <b>{severity}</b> <Said text={message} />
          </p>
          {remedy ? <p class="remedy">{remedy}</p> : null}
        </li>
      ))}
    </ul>
  )
}
