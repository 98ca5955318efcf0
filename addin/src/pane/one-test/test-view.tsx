import { Component } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import { drawnOnChange } from '../drawn-on-change.js'
import { useMarks } from './mark-toggle.js'
import type { SectionProps } from './section.js'
import { SectionBox } from './section-box.js'
import { StatusLine } from './status-line.js'
import { placeOf, STEPS, type Step } from './step.js'
import { StepBar } from './step-bar.js'

/** One test in three steps, under a line that always says where it stands. */
export const TestView = drawnOnChange(
  WholeTest,
  ({ store, state: { origin, saved, fault, offline, canUndo, ...shown } }) => [
    store,
    ...Object.values(shown),
  ],
)

function WholeTest({ store, state }: SectionProps) {
  const room = useRef<HTMLDivElement>(null)
  useMarks({ store, state })
  useLayoutEffect(() => {
    room.current?.closest('.pane')?.scrollTo({ top: 0 })
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

/** A step keeps what was folded and said in it while another is on show, and costs nothing then. */
class StepPanel extends Component<SectionProps & { step: Step }> {
  #entered = false

  override shouldComponentUpdate(next: SectionProps & { step: Step }): boolean {
    return next.state.step === next.step.id || this.props.state.step === this.props.step.id
  }

  override render({ step, store, state }: SectionProps & { step: Step }) {
    const current = state.step === step.id
    this.#entered ||= current
    if (!this.#entered) return null
    return (
      <div class={`step step-${step.id}`} hidden={!current} data-panel={step.id}>
        {step.sections.map((section) =>
          section.shown?.({ store, state }) === false ? null : (
            <SectionBox key={section.id} section={section} step={step} store={store} state={state} />
          ),
        )}
      </div>
    )
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
