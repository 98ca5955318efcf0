import type { ComponentChildren } from 'preact'

export const percent = (share: number): string => `${Math.round(100 * share)} %`

interface TableProps {
  caption: string
  heads: readonly string[]
  /** Heads of columns of numbers. */
  numbers?: readonly string[]
  class?: string
  children: ComponentChildren
}

/** A table that scrolls sideways in a room of its own where the window is narrow. */
export function Table({ caption, heads, numbers = [], class: look, children }: TableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scrolls" tabIndex={0} aria-label={caption}>
      <table class={`several ${look ?? ''}`}>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th scope="col" key={head} class={numbers.includes(head) ? 'number' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </section>
  )
}
