import { counted } from '@draughtbook/shared-calc'
import type { StepId } from '../../kept/kept-test.js'
import type { SectionProps } from './section.js'
import { isLogOpen, type Standing, standingOf } from './standing.js'
import { placeOf, STEPS } from './step.js'

/** The three steps, each with how far it has come; any can be entered at any time. */
export function StepBar({ store, state }: SectionProps) {
  const standing = standingOf(state, isLogOpen(store))
  return (
    <nav class="steps" aria-label="Steps">
      {STEPS.map(({ id, title }, index) => (
        <button
          type="button"
          key={id}
          data-step={id}
          aria-current={state.step === id ? 'step' : undefined}
          onClick={() => store.show(id)}
        >
          <span class="step-number" aria-hidden="true">
            {index + 1}
          </span>
          <span class="step-title">{title}</span>
          <span class="step-state">{stateOf(id, state, standing)}</span>
        </button>
      ))}
    </nav>
  )
}

const OUTCOMES: Partial<Record<Standing['stage'], string>> = {
  meets: 'meets',
  misses: 'fails',
  'not valid': 'not valid',
  'under way': 'under way',
  'no target': 'no target',
}

function stateOf(id: StepId, { result }: SectionProps['state'], { stage, missing }: Standing): string {
  if (id === 'result') return OUTCOMES[stage] ?? 'none yet'
  if (stage === 'log open') return id === 'site' ? 'accept the log' : '–'
  const readings = (result?.site.readings ?? []).reduce((sum, { state }) => sum + state.readings, 0)
  // Once there are readings, those to come are told in the line above.
  const own = missing.filter(
    ({ path }) => placeOf(path)?.step === id && (path !== 'runs' || readings === 0),
  ).length
  if (own > 0) return `${own} missing`
  if (id === 'before') return 'complete'
  return readings === 0 ? 'no readings' : counted(readings, 'reading')
}
