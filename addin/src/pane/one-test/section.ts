import type { ComponentType } from 'preact'
import type { TestState, TestStore } from './store.js'

export interface SectionProps {
  store: TestStore
  state: TestState
}

/** One part of the Test view; its element carries the class `section-` and the id, so that no id meets a class of a part. `open`: shown unfolded at first; `always`: cannot be folded away. */
export interface Section {
  id: string
  title: string
  fold: 'open' | 'closed' | 'always'
  Body: ComponentType<SectionProps>
  /** A few words beside the title, so that a folded section still tells its state. */
  summary?: (state: TestState) => string
}
