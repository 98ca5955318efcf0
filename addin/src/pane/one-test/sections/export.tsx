import { useState } from 'preact/hooks'
import type { Done, Job } from '../../../worker/messages.js'
import type { Section, SectionProps } from '../section.js'
import type { TestStore } from '../store.js'
import { reportParts } from './export/report-parts.js'

/** Writes the summary: into this workbook, as a new one, or to disk as workbook or PDF. */
function Export({ store, state }: SectionProps) {
  const [doing, setDoing] = useState<string>()
  const [done, setDone] = useState<string>()
  const { result } = state
  const ready = result?.record !== undefined && result.evaluation !== undefined && !result.unusable
  const why = ready
    ? undefined
    : result?.unusable
      ? 'First correct the entries that cannot be used: see the findings.'
      : 'There is no result to write yet.'
  const { unavailable, kind } = store.host

  const button = (label: string, write: (store: TestStore) => Promise<string | undefined>, off?: string) => (
    <button
      type="button"
      class={label === DOWNLOAD ? 'main-action' : undefined}
      disabled={!ready || doing !== undefined || off !== undefined}
      onClick={async () => {
        setDoing(write === downloadPdf ? 'Writing the PDF …' : 'Writing the workbook …')
        setDone(undefined)
        const words = await store.attempt(() => write(store))
        setDoing(undefined)
        setDone(words)
      }}
    >
      {label}
    </button>
  )
  return (
    <div class="export">
      {kind === 'excel' ? (
        <>
          {button('Write into this workbook', insert, unavailable.insertWorkbook)}
          {button('Open as a new workbook', openNew)}
        </>
      ) : null}
      {button(DOWNLOAD, downloadWorkbook, unavailable.download)}
      {button('Download as PDF', downloadPdf, unavailable.download)}
      {kind === 'excel'
        ? [unavailable.insertWorkbook, unavailable.download].map((words) =>
            words ? (
              <p class="hint" key={words}>
                {words}
              </p>
            ) : null,
          )
        : null}
      {why ? <p class="hint">{why}</p> : null}
      <p role="status">{doing ?? done}</p>
    </div>
  )
}

const DOWNLOAD = 'Download the summary workbook'

async function insert(store: TestStore): Promise<string | undefined> {
  const taken = (await store.host.sheets()).map(({ name }) => name)
  const written = await work(store, (parts) => ({ kind: 'summary', insertBeside: taken, ...parts }))
  if (written?.done.kind !== 'written') return undefined
  const inserted = await store.host.insertWorkbook(written.done.bytes, written.done.chart)
  return [`Added ${inserted.sheets.join(', ')} to this workbook.`, ...inserted.notes, ...written.notes].join(
    ' ',
  )
}

async function openNew(store: TestStore): Promise<string | undefined> {
  const written = await work(store, (parts) => ({ kind: 'summary', ...parts }))
  if (written?.done.kind !== 'written') return undefined
  await store.host.openWorkbook(written.done.bytes, `${written.name}.xlsx`)
  return ['The summary is open as a new workbook; save it there.', ...written.notes].join(' ')
}

async function downloadWorkbook(store: TestStore): Promise<string | undefined> {
  const written = await work(store, (parts) => ({ kind: 'summary', ...parts }))
  if (written?.done.kind !== 'written') return undefined
  await store.host.download(written.done.bytes, `${written.name}.xlsx`)
  return [`Downloaded ${written.name}.xlsx.`, ...written.notes].join(' ')
}

async function downloadPdf(store: TestStore): Promise<string | undefined> {
  const written = await work(store, (parts) => ({ kind: 'pdf', ...parts }))
  if (written?.done.kind !== 'pdf-written') return undefined
  const { bytes, lacking } = written.done
  await store.host.download(bytes, `${written.name}.pdf`, 'application/pdf')
  const boxes =
    lacking.length > 0 ? [`The PDF font lacks ${lacking.join(' ')}; each appears as an empty box.`] : []
  return [`Downloaded ${written.name}.pdf.`, ...boxes, ...written.notes].join(' ')
}

type Parts = NonNullable<Awaited<ReturnType<typeof reportParts>>>

async function work(
  store: TestStore,
  jobFor: (parts: Parts['parts']) => Job,
): Promise<{ done: Done; name: string; notes: string[] } | undefined> {
  const made = await reportParts(store)
  if (!made) return undefined
  const { runJob } = await import('../../../worker/run-job.js')
  return { done: await runJob(jobFor(made.parts)), name: made.name, notes: made.notes }
}

export const exportSection: Section = {
  id: 'export',
  title: 'Summary and test report',
  steps: ['result'],
  fold: 'always',
  Body: Export,
}
