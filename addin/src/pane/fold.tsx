import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'

interface FoldProps {
  class: string
  /** Whether there is something in it to see now. */
  open: boolean
  summary: ComponentChildren
  children: ComponentChildren
}

/** Unfolds when there is something in it to see. It never folds by itself: whoever empties one field goes on to the next. */
export function Fold({ class: name, open, summary, children }: FoldProps) {
  const box = useRef<HTMLDetailsElement>(null)
  useLayoutEffect(() => {
    if (open && box.current) box.current.open = true
  }, [open])
  return (
    <details class={name} ref={box}>
      <summary>{summary}</summary>
      {children}
    </details>
  )
}
