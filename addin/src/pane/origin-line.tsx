import { AccessTokenForm, type TakeToken } from './access-token.js'
import type { TestState } from './one-test/test-state.js'

interface OriginLineProps {
  state: TestState
  /** A view is on show that has nothing to do with the test: only what went wrong is said. */
  aside: boolean
  /** Of the house on show. */
  name: string
  onDismiss: () => void
  onToken: TakeToken
}

/** Where the figures come from, whether the entries are kept, and what the spreadsheet refused. */
export function OriginLine({ state, aside, name, onDismiss, onToken }: OriginLineProps) {
  const { origin, saved, fault, offline, newer } = state
  const words =
    origin.kind === 'none'
      ? state.result?.running
        ? 'Calculated on this device'
        : 'Nothing to calculate yet'
      : origin.kind === 'service'
        ? 'Calculated by the service'
        : origin.words
  const kept =
    saved === 'yes'
      ? 'entries saved'
      : saved === 'saving'
        ? 'saving entries …'
        : `entries not saved: ${saved}`
  return (
    <div class="origin">
      {aside ? null : (
        <p
          role="status"
          class={
            origin.kind === 'local' && ['unreachable', 'access'].includes(origin.why) ? 'warn' : undefined
          }
        >
          {name ? (
            <>
              <b class="house">{name}</b>
              <span aria-hidden="true"> · </span>
            </>
          ) : null}
          <span data-origin={origin.kind === 'local' ? origin.why : origin.kind}>{words}</span>
          <span aria-hidden="true"> · </span>
          <span data-saved={saved === 'yes' || saved === 'saving' ? saved : 'no'}>{kept}</span>
          {offline === undefined ? null : offline === 'yes' ? (
            <span data-offline="yes"> · works offline</span>
          ) : (
            <span class="warn" data-offline="no">
              {' '}
              · does not work offline: {offline}
            </span>
          )}
          {newer ? (
            <span data-newer="yes">
              {' '}
              · a newer version of this page is ready: close every tab of this page, then open it again
            </span>
          ) : null}
        </p>
      )}
      {origin.kind === 'local' && origin.why === 'access' ? <AccessTokenForm onToken={onToken} /> : null}
      {origin.kind === 'service' && origin.difference ? <p class="fault">{origin.difference}</p> : null}
      {fault ? (
        <p class="fault" role="alert">
          <span>{fault}</span>
          <button type="button" onClick={onDismiss} aria-label="Dismiss this message">
            ×
          </button>
        </p>
      ) : null}
    </div>
  )
}
