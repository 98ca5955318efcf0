import { useId, useRef, useState } from 'preact/hooks'
import type { TestStore } from '../one-test/store.js'
import { Thumbnail } from './thumbnail.js'

interface PhotoBoxProps {
  store: TestStore
  /** What it is a photo of, for those who do not see it. */
  of: string
  /** File name of the photo taken; '' for none. */
  name: string
  /** How the file name begins. */
  start: string
  onName: (name: string) => void
}

/** Takes a photo with the camera or from a file, shows it small, and takes it away again. */
export function PhotoBox({ store, of, name, start, onName }: PhotoBoxProps) {
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  const { photos } = store.host
  if (!photos) return null
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setBusy(true)
    const taken = await store.attempt(async () => {
      const { shrinkPhoto } = await import('./shrink-photo.js')
      return photos.take(start, await shrinkPhoto(file))
    })
    setBusy(false)
    if (taken !== undefined) onName(taken)
  }
  return (
    <div class="photo-box">
      {name === '' ? null : <Thumbnail photos={photos} name={name} of={of} />}
      <button type="button" class="take-photo" disabled={busy} onClick={() => input.current?.click()}>
        <CameraIcon /> {busy ? 'Adding …' : name === '' ? 'Take a photo' : 'Take it again'}
        <span class="unseen"> of {of}</span>
      </button>
      {name === '' ? null : (
        <button type="button" onClick={() => onName('')}>
          Remove the photo<span class="unseen"> of {of}</span>
        </button>
      )}
      <input
        ref={input}
        id={id}
        type="file"
        hidden
        accept="image/*"
        capture="environment"
        aria-label={`Photo of ${of}`}
        onChange={(event) => {
          void take(event.currentTarget.files?.[0])
          event.currentTarget.value = ''
        }}
      />
    </div>
  )
}

function CameraIcon() {
  return (
    <svg viewBox="0 0 20 16" width="20" height="16" aria-hidden="true">
      <path d="M1 4h4l1.5-2h7L15 4h4v11H1z" fill="none" stroke="currentColor" stroke-width="1.4" />
      <circle cx="10" cy="9" r="3.4" fill="none" stroke="currentColor" stroke-width="1.4" />
    </svg>
  )
}
