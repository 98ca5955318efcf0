import { counted } from '@draughtbook/shared-calc'
import { useState } from 'preact/hooks'
import { HostError } from '../../host/host.js'
import type { PageHost } from '../../host/page/page-host.js'
import type { PageTests } from './page-tests.js'

/** Files whose cells can be changed without touching anything else in them. */
const SAVED = /\.(xls[xm]|ods|csv|tsv|txt)$/i
const TEXT = /\.(csv|tsv|txt)$/i
const SPREADSHEET = /\.ods$/i

const ODS_TYPE = 'application/vnd.oasis.opendocument.spreadsheet'

/** Writes the changed cells into a copy of the log's own file. */
export function SaveLog({ tests }: { tests: PageTests }) {
  const { host, store } = tests
  const [busy, setBusy] = useState(false)
  const [left, setLeft] = useState('')
  const { edits, log } = host.test.now
  if (edits.length === 0 || !log) return null
  const count = counted(edits.length, 'change')
  if (!SAVED.test(log.name))
    return (
      <p class="hint save-log">
        {count} made here, kept with the test. This page can save changes in .xlsx, .xlsm, .ods, .csv and .tsv
        files, not in {log.name}: change that file in the program it was made with.
      </p>
    )
  const save = async (): Promise<void> => {
    setBusy(true)
    const words = await store.attempt(() => saveCorrected(host, log.name))
    setBusy(false)
    setLeft(words ?? '')
  }
  return (
    <p class="save-log">
      <button type="button" disabled={busy} onClick={() => void save()}>
        {busy ? 'Writing …' : `Save the log with ${count}`}
      </button>
      {left ? (
        <span class="fault" role="alert">
          {left}
        </span>
      ) : null}
    </p>
  )
}

/** @returns which cells could not be changed, in words */
async function saveCorrected(host: PageHost, name: string): Promise<string> {
  const { now } = host.test
  const bytes = await host.test.read((base) => base.log(now.id))
  if (!bytes)
    throw new HostError('not-found', `${name} itself is not kept here: open it again from its file.`)
  const { runJob } = await import('../../worker/run-job.js')
  const patches = now.edits.map(({ sheet, row, column }) => {
    const value = host.book?.sheets.find((one) => one.name === sheet)?.at(row - 1, column - 1)?.value
    return { sheet, row, column, content: typeof value === 'boolean' ? String(value) : value }
  })
  const { decimal } = host.book?.opened ?? {}
  const done = await runJob(
    TEXT.test(name)
      ? { kind: 'patch-text', bytes, patches, decimal: decimal ?? '.' }
      : { kind: SPREADSHEET.test(name) ? 'patch-spreadsheet' : 'patch', bytes, patches },
  )
  if (done.kind !== 'patched') throw new Error(`the worker answered ${done.kind}`)
  await host.download(
    done.bytes,
    name.replace(/(\.\w+)$/, '-corrected$1'),
    ...(TEXT.test(name) ? ['text/csv'] : SPREADSHEET.test(name) ? [ODS_TYPE] : []),
  )
  return done.left.map(({ cell, why }) => `${cell} was not changed: ${why}.`).join(' ')
}
