import { Component, type ComponentChildren } from 'preact'

interface GuardProps {
  /** What is drawn; once it has changed, drawing is tried again. */
  of: unknown
  children: ComponentChildren
}

/** Whatever cannot be drawn leaves the rest of the page in use, and says so in its own place. */
export class DrawingGuard extends Component<GuardProps, { failed?: { of: unknown; why: string } }> {
  override componentDidCatch(error: unknown): void {
    console.error(error)
    const why = error instanceof Error ? error.message : String(error)
    this.setState({ failed: { of: this.props.of, why } })
  }

  override render({ of, children }: GuardProps) {
    const { failed } = this.state
    if (failed?.of !== of) return children
    return (
      <p class="fault" role="alert">
        This part could not be shown ({failed?.why}). Take back the last change with Undo, or save the test as
        a file under All tests.
      </p>
    )
  }
}
