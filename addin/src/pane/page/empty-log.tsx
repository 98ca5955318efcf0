import { dayOf } from '@draughtbook/shared-calc'
import { useState } from 'preact/hooks'
import type { PageTests } from './page-tests.js'

/** Rows for readings in each direction, as `draughtbook template` writes them. */
const READINGS = 10

/** Puts an empty log on the page, to be filled in here; it carries its layout, so that it is read without a question. */
export function EmptyLog({ tests }: { tests: PageTests }) {
  const [busy, setBusy] = useState(false)
  const start = async (): Promise<void> => {
    setBusy(true)
    await tests.store.attempt(async () => {
      const [{ runJob }, { readBook }] = await Promise.all([
        import('../../worker/run-job.js'),
        import('../../worker/run-job.js'),
      ])
      const { 'test.method': method } = tests.store.state.entries.fields
      const done = await runJob({
        kind: 'template',
        method: method && 'text' in method ? method.text : 'iso-9972:2015',
        readings: READINGS,
      })
      if (done.kind !== 'template-written') throw new Error(`the worker answered ${done.kind}`)
      const name = 'test-log.xlsx'
      const book = await readBook(done.bytes, name)
      await tests.startWith({ bytes: done.bytes, name, date: dayOf(), book })
    })
    setBusy(false)
  }
  return (
    <button type="button" disabled={busy} onClick={() => void start()}>
      {busy ? 'Writing …' : 'Start an empty log'}
    </button>
  )
}
