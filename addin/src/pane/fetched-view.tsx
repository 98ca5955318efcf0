import { type ComponentType, h } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { MISSING_PART } from './missing-part.js'

/** A view that is fetched when it is first shown, so that the page opens sooner for those who do not need it. */
export function fetchedView<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> {
  let view: ComponentType<Props> | undefined
  return function Fetched(props: Props) {
    const [state, setState] = useState<'here' | 'coming' | 'out of reach'>(view ? 'here' : 'coming')
    useEffect(() => {
      if (view) return
      load().then(
        (found) => {
          view = found
          setState('here')
        },
        () => setState('out of reach'),
      )
    }, [])
    if (view) return h(view, props)
    return state === 'coming' ? (
      <p class="hint" role="status">
        Loading …
      </p>
    ) : (
      <p class="fault" role="alert">
        {MISSING_PART}
      </p>
    )
  }
}
