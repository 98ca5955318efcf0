import { Component, type ComponentChild, type ComponentClass, h } from 'preact'

/**
 * A part of the page that is redrawn only when something it shows has changed: most keystrokes change one field of many.
 * @param shown what it shows, in a fixed order; without it, every property
 */
export function drawnOnChange<Props extends object>(
  draw: (props: Props) => ComponentChild,
  shown: (props: Props) => readonly unknown[] = Object.values,
): ComponentClass<Props> {
  return class extends Component<Props> {
    override shouldComponentUpdate(next: Readonly<Props>): boolean {
      const before = shown(this.props)
      const after = shown(next)
      return before.length !== after.length || after.some((value, at) => value !== before[at])
    }

    override render() {
      return h(draw, this.props)
    }
  }
}
