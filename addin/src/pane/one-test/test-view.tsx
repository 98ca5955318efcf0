import type { SectionProps } from './section.js'
import { sections } from './sections.js'

/** One test: what was read, what it comes to, and what objects to it. */
export function TestView({ store, state }: SectionProps) {
  return (
    <div class="test-view">
      {sections.map(({ id, title, fold, summary, Body }) => {
        const words = summary?.(state)
        if (fold === 'always')
          return (
            <section key={id} class={`section section-${id}`} aria-labelledby={`${id}-title`}>
              <h2 id={`${id}-title`}>{title}</h2>
              <Body store={store} state={state} />
            </section>
          )
        return (
          <details
            key={id}
            class={`section section-${id}`}
            open={fold === 'open'}
            onToggle={(event) => id === 'working' && store.showTrace(event.currentTarget.open)}
          >
            <summary>
              <h2>{title}</h2>
              {words ? <span class="tell">{words}</span> : null}
            </summary>
            <Body store={store} state={state} />
          </details>
        )
      })}
    </div>
  )
}
