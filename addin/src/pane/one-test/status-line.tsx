import { judgedTexts, unitText } from '@draughtbook/shared-calc'
import { figure } from '../figures.js'
import { Said } from '../said.js'
import type { SectionProps } from './section.js'
import { type Against, isLogOpen, STAGE_WORDS, type Standing, standingOf } from './standing.js'
import { placeOf } from './step.js'
import type { TestStore } from './store.js'

const SHAPES: Record<Standing['stage'], string> = {
  empty: '○',
  'log open': '○',
  unfinished: '○',
  running: '≈',
  'under way': '≈',
  meets: '✓',
  misses: '✗',
  'not valid': '!',
  'no target': '–',
}
/** How many missing fields are named; the rest are counted. */
const NAMED = 3

/** Always in view: where the test stands, its value against the limit, what is missing, the gravest finding. */
export function StatusLine({ store, state }: SectionProps) {
  const standing = standingOf(state, isLogOpen(store))
  const { stage, against, missing, worst } = standing
  const others = standing.cautions + standing.invalidating - 1
  return (
    <section class={`standing ${stage.replace(' ', '-')}`} aria-label="Status of the test">
      <div
        class="standing-main"
        role="status"
        {...(state.evaluation ? { 'data-outcome': stage } : { 'data-stage': stage })}
      >
        <p class="outcome">
          <span class="shape" aria-hidden="true">
            {SHAPES[stage]}
          </span>
          {STAGE_WORDS[stage]}
        </p>
        {against ? <Value {...against} running={stage === 'running' || stage === 'under way'} /> : null}
      </div>
      {against?.limit === undefined ? null : <Bar value={against.value} limit={against.limit} />}
      {missing.length > 0 ? (
        <p class="standing-more">
          <span class="tell">
            {stage === 'under way' ? 'Still missing' : state.evaluation ? 'Choose a' : 'Missing'}
          </span>{' '}
          {missing.slice(0, NAMED).map(({ path, label }) => (
            <button type="button" class="link" key={label} onClick={() => leadTo(store, path)}>
              {label}
            </button>
          ))}
          {missing.length > NAMED ? <span class="tell">and {missing.length - NAMED} more</span> : null}
        </p>
      ) : null}
      {stage === 'log open' ? (
        <p class="standing-more">
          <button type="button" class="link" onClick={() => leadTo(store, 'log')}>
            Check how the log is read
          </button>
          <span class="tell">Answer what it asks, then accept it.</span>
        </p>
      ) : null}
      {worst ? (
        <p class={`standing-more worst ${worst.severity}`}>
          <button type="button" class="link" title={worst.message} onClick={() => leadTo(store, 'findings')}>
            <span class="first-lines">
              <span aria-hidden="true">{worst.severity === 'invalidates' ? '■' : '▲'}</span>{' '}
              <Said text={worst.message} />
            </span>
          </button>
          {others > 0 ? <span class="tell">and {others} more</span> : null}
        </p>
      ) : null}
    </section>
  )
}

function Value({ quantity, value, unit, limit, margin, label, running }: Against & { running: boolean }) {
  const texts =
    limit === undefined || margin === undefined ? undefined : judgedTexts({ value, limit, margin })
  return (
    <p class="against">
      <b>
        {quantity} {running ? '≈ ' : ''}
        {texts ? texts.value : figure(value, running ? 2 : 3)} {unitText(unit)}
      </b>
      {limit === undefined ? null : (
        <>
          {', '}
          <span class="part-of-line">limit {texts?.limit ?? String(Number(limit.toPrecision(4)))}</span>
          {texts ? (
            <>
              {', '}
              <span class="part-of-line">margin {texts.margin}</span>
            </>
          ) : null}
          {label ? <span class="target-name"> · {label}</span> : null}
        </>
      )}
    </p>
  )
}

/** The value on a scale that ends at one and a half times the limit; the words above say the same. */
function Bar({ value, limit }: { value: number; limit: number }) {
  const end = 1.5
  const share = Math.min(value / limit, end) / end
  return (
    <svg class="standing-bar" viewBox="0 0 150 6" preserveAspectRatio="none" aria-hidden="true">
      <rect class="whole" width="150" height="6" />
      <rect class="part" width={Math.max(0, share) * 150} height="6" />
      <rect class="tick" x={150 / end - 0.5} width="1" height="6" />
    </svg>
  )
}

/** Leads to where a field of the record is asked for, or to the findings. */
function leadTo(store: TestStore, path: string): void {
  const { step } = store.state
  const own = path === 'log' ? 'site' : (placeOf(path)?.step ?? step)
  const findings = step === 'before' ? 'site' : step
  store.lead(path === 'findings' ? findings : own, path)
}
