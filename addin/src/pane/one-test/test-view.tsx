import { Component } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { drawnOnChange } from '../drawn-on-change.js'
import { drawn, whenIdle } from '../when-idle.js'
import { useMarks } from './mark-toggle.js'
import type { SectionProps } from './section.js'
import { SectionBox } from './section-box.js'
import { StatusLine } from './status-line.js'
import { placeOf, STEPS, type Step } from './step.js'
import { StepBar } from './step-bar.js'

/** One test in three steps, under a line that always says where it stands. */
export const TestView = drawnOnChange(
  WholeTest,
  ({ store, state: { origin, saved, fault, offline, newer, canUndo, ...shown } }) => [
    store,
    ...Object.values(shown),
  ],
)

function WholeTest({ store, state }: SectionProps) {
  const room = useRef<HTMLDivElement>(null)
  const first = useRef(true)
  useMarks({ store, state })
  useLayoutEffect(() => {
    // What was just drawn for the first time is at its top; scrolling it would lay it out once for nothing.
    if (!first.current) room.current?.closest('.pane')?.scrollTo({ top: 0 })
    first.current = false
  }, [state.step, state.opened])
  useEffect(() => {
    if (state.wanted && room.current) bringIntoView(room.current, state.wanted.path)
  }, [state.wanted])
  return (
    <div class="test-view" ref={room}>
      <div class="standing-room">
        <StatusLine store={store} state={state} />
        <StepBar store={store} state={state} />
      </div>
      {STEPS.map((step) => (
        // Another test, another panel: nothing that was said of the one before stays.
        <StepPanel key={`${step.id} ${state.opened}`} step={step} store={store} state={state} />
      ))}
    </div>
  )
}

/** Sections drawn with the step; they fill a screen, and a key can be pressed before the rest is there. */
const AT_ONCE = 2
/** The next section is drawn after this time, however busy the page is. */
const NEXT_ms = 100

/** A step keeps what was folded and said in it while another is on show, and costs nothing then. */
class StepPanel extends Component<SectionProps & { step: Step }> {
  #entered = false
  #drawn = AT_ONCE
  #waits = false
  #gone = false

  override shouldComponentUpdate(next: SectionProps & { step: Step }): boolean {
    return next.state.step === next.step.id || this.props.state.step === this.props.step.id
  }

  override render({ step, store, state }: SectionProps & { step: Step }) {
    const current = state.step === step.id
    this.#entered ||= current
    if (!this.#entered) return null
    const shown = step.sections.filter((section) => section.shown?.({ store, state }) !== false)
    // Whoever is led to a field may be led to any of them.
    if (state.wanted) this.#drawn = shown.length
    const busy = this.#drawn < shown.length
    if (busy) this.#drawNext()
    return (
      <div
        class={`step step-${step.id}`}
        hidden={!current}
        data-panel={step.id}
        aria-busy={busy ? 'true' : undefined}
      >
        {shown.slice(0, this.#drawn).map((section) => (
          <SectionBox key={section.id} section={section} step={step} store={store} state={state} />
        ))}
      </div>
    )
  }

  override componentWillUnmount(): void {
    this.#gone = true
  }

  #drawNext(): void {
    if (this.#waits) return
    this.#waits = true
    const draw = (): void => {
      if (this.#gone) return
      this.#waits = false
      this.#drawn += 1
      this.forceUpdate()
    }
    // What is there already is on show, and can be typed into, before more is drawn.
    void drawn().then(() => whenIdle(draw, NEXT_ms))
  }
}

const ENTRY = 'input, select, textarea, button'

/** Unfolds what hides the field, or else the part of the step that asks for it, and puts the cursor there. */
function bringIntoView(room: HTMLElement, path: string): void {
  const panel = room.querySelector<HTMLElement>('[data-panel]:not([hidden])')
  const found =
    panel?.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`) ??
    panel?.querySelector<HTMLElement>(`[data-section="${placeOf(path)?.section ?? path}"]`)
  if (!found) return
  for (let at: Element | null = found; at && at !== panel; at = at.parentElement)
    if (at instanceof HTMLDetailsElement) at.open = true
  found.scrollIntoView({ block: 'start' })
  const entry = [...found.querySelectorAll<HTMLElement>(ENTRY)].find((one) => !one.closest('summary'))
  entry?.focus({ preventScroll: true })
}
