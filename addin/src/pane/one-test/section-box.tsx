import { Component, type VNode } from 'preact'
import type { Section, SectionProps } from './section.js'
import { placeOf, type Step } from './step.js'

type BoxProps = SectionProps & { section: Section; step: Step }

/** A part of a step with its title. What is folded away is drawn when it is first unfolded, and costs nothing while it is folded. */
export class SectionBox extends Component<BoxProps> {
  #fold: string | undefined
  #open = false
  #body: VNode | undefined

  override render({ section, step, store, state }: BoxProps) {
    const { id, title, summary, Body } = section
    const fold = typeof section.fold === 'function' ? section.fold(state) : section.fold
    const words = summary?.(state)
    const heading = `${step.id}-${id}-title`
    if (fold === 'always')
      return (
        <section class={`section section-${id}`} data-section={id} aria-labelledby={heading}>
          <h2 id={heading}>{title}</h2>
          {words ? <span class="tell">{words}</span> : null}
          <Body store={store} state={state} />
        </section>
      )
    // The element follows `fold` only when it changes: in between it is the user's.
    if (fold !== this.#fold) this.#open = fold === 'open'
    this.#fold = fold
    // The same node again is not drawn again.
    if (this.#open || this.#isWanted()) this.#body = <Body store={store} state={state} />
    return (
      <details
        class={`section section-${id}`}
        data-section={id}
        open={fold === 'open'}
        onToggle={({ currentTarget }) => this.#turned(currentTarget.open)}
      >
        <summary>
          <h2>{title}</h2>
          {words ? <span class="tell">{words}</span> : null}
        </summary>
        {this.#body ?? null}
      </details>
    )
  }

  /** Somebody asked to be led to a field in here; it is unfolded once it is drawn. */
  #isWanted(): boolean {
    const { section, state } = this.props
    const path = state.wanted?.path
    return path !== undefined && (section.id === path || placeOf(path)?.section === section.id)
  }

  #turned(open: boolean): void {
    const { section, store } = this.props
    if (section.id === 'working') store.showTrace(open)
    if (open === this.#open) return
    this.#open = open
    if (open) this.forceUpdate()
  }
}
