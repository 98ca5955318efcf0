import { useState } from 'preact/hooks'

/** Takes a token that was entered, and whether the browser is to keep it when the tab is closed. */
export type TakeToken = (token: string, lasting: boolean) => void

/** Asks for the access token that the firm's service wants. */
export function AccessTokenForm({ onToken }: { onToken: TakeToken }) {
  const [text, setText] = useState('')
  const [lasting, setLasting] = useState(false)
  return (
    <form
      class="access"
      onSubmit={(event) => {
        event.preventDefault()
        onToken(text.trim(), lasting)
      }}
    >
      <label for="access-token">Access token</label>
      <div class="entry">
        <input
          id="access-token"
          type="password"
          autoComplete="off"
          spellcheck={false}
          value={text}
          onInput={({ currentTarget }) => setText(currentTarget.value)}
        />
        <button type="submit" disabled={text.trim() === ''}>
          Use
        </button>
      </div>
      <label class="choice-line">
        <input
          type="checkbox"
          checked={lasting}
          onChange={({ currentTarget }) => setLasting(currentTarget.checked)}
        />
        Keep it in this browser (not on a shared computer)
      </label>
      <p class="hint">
        Ask whoever runs the service for one. Otherwise it is forgotten when you close this tab.
      </p>
    </form>
  )
}
