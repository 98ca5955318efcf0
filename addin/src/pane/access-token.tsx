import { useState } from 'preact/hooks'

/** Asks for the access token that the firm's service wants. */
export function AccessTokenForm({ onToken }: { onToken: (token: string) => void }) {
  const [text, setText] = useState('')
  return (
    <form
      class="access"
      onSubmit={(event) => {
        event.preventDefault()
        onToken(text.trim())
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
      <p class="hint">Ask whoever runs the service for one. It is kept in this browser only.</p>
    </form>
  )
}
