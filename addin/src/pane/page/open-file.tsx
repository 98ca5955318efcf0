import { useRef, useState } from 'preact/hooks'
import { HostError } from '../../host/host.js'
import type { PageHost } from '../../host/page/page-host.js'
import type { TestStore } from '../one-test/store.js'
import { readTestFile } from '../one-test/test-file.js'

/** Opens a log from disk; the reading itself happens in a worker with a deadline. */
export function OpenFile({ host, store }: { host: PageHost; store: TestStore }) {
  const input = useRef<HTMLInputElement>(null)
  const [busy, setBusy] = useState(false)
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return
    setBusy(true)
    await store.save()
    if (/\.json$/i.test(file.name)) {
      const entries = await store.attempt(async () =>
        readTestFile(new TextDecoder().decode(await bytesOf(file)), file.name),
      )
      setBusy(false)
      if (!entries) return
      host.close()
      // The test typed here before is there again with Undo.
      await store.restore()
      store.startAnew(entries)
      return store.dismissFault()
    }
    const book = await store.attempt(async () => {
      const [{ runJob }, bytes] = await Promise.all([import('../../worker/run-job.js'), bytesOf(file)])
      const done = await runJob({ kind: 'open', bytes, fileName: file.name }, 20_000)
      return done.kind === 'opened' ? done.book : undefined
    })
    setBusy(false)
    if (!book) return
    host.show({ ...book, fileDate: new Date(file.lastModified).toISOString().slice(0, 10) })
    store.dismissFault()
    await store.restore()
    store.show('site')
  }
  return (
    <>
      <button type="button" class="open-log" disabled={busy} onClick={() => input.current?.click()}>
        {busy ? 'Opening …' : 'Open a test log'}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept=".json,.xlsx,.xlsm,.ods,.csv,.txt,.tsv"
        aria-label="Test log"
        onChange={(event) => {
          void open(event.currentTarget.files?.[0])
          event.currentTarget.value = ''
        }}
      />
    </>
  )
}

async function bytesOf(file: File): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.arrayBuffer())
  } catch (cause) {
    throw new HostError('failed', `${file.name} could not be read from disk.`, { cause })
  }
}
