import type { ComponentType } from 'preact'
import type { StepId } from '../../kept/kept-test.js'
import type { TestStore } from './store.js'
import type { TestState } from './test-state.js'

type Fold = 'open' | 'closed' | 'always'

export interface SectionProps {
  store: TestStore
  state: TestState
}

/**
 * One part of a step; its element carries the class `section-` and the id, so that no id meets a class of a part.
 * `open`: shown unfolded at first; `always`: cannot be folded away.
 */
export interface Section {
  id: string
  title: string
  /** Where it is shown; few stand in more than one. */
  steps: readonly StepId[]
  /** Fields of the record asked for here, by the beginning of their path: what is missing leads to them. */
  holds?: readonly string[]
  fold: Fold | ((state: TestState) => Fold)
  Body: ComponentType<SectionProps>
  /** A few words beside the title, so that a folded section still tells its state. */
  summary?: (state: TestState) => string
  /** Whether the section is of any use as things stand; without it, always. */
  shown?: (props: SectionProps) => boolean
}
