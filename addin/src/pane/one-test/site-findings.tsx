import type { Finding } from '@draughtbook/shared-calc'
import type { SectionProps } from './section.js'

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
