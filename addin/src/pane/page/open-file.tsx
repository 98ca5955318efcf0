import { dayOf, visible } from '@draughtbook/shared-calc'
import { useRef, useState } from 'preact/hooks'
import { HostError } from '../../host/host.js'
import type { TestStore } from '../one-test/store.js'
import type { PageTests } from './page-tests.js'

interface OpenFileProps {
  tests: PageTests
  store: TestStore
  /** It is what to do first. */
  first: boolean
}

/** Opens a log, or a test saved as a file, from disk; the reading itself happens in a worker with a deadline. */
export function OpenFile({ tests, store, first }: OpenFileProps) {
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setBusy(true)
    const name = visible(file.name)
    const bytes = await store.attempt(() => bytesOf(file, name))
    if (bytes && /\.(json|zip)$/i.test(name)) await tests.takeFile(bytes, name)
    else if (bytes) {
      const book = await store.attempt(async () => {
        const { readBook } = await import('../../worker/run-job.js')
        return readBook(bytes, name)
      })
      const date = dayOf(new Date(file.lastModified))
      if (book) await tests.takeLog({ bytes, name, date, book })
    }
    setBusy(false)
  }
  return (
    <>
      <button
        type="button"
        class={first ? 'main-action' : ''}
        disabled={busy}
        onClick={() => input.current?.click()}
      >
        {busy ? 'Opening …' : 'Open a test log'}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".zip,.json,.xlsx,.xlsm,.ods,.csv,.txt,.tsv"
        aria-label="Test log"
        onChange={(event) => {
          void open(event.currentTarget.files?.[0])
          event.currentTarget.value = ''
        }}
      />
    </>
  )
}

async function bytesOf(file: File, name: string): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.arrayBuffer())
  } catch (cause) {
    throw new HostError('failed', `${name} could not be read from disk.`, { cause })
  }
}
