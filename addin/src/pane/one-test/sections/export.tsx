import { useState } from 'preact/hooks'
import type { Host, InsertedChart } from '../../../host/host.js'
import { plainName } from '../../plain-name.js'
import { type Lists, photosIn } from '../lists.js'
import type { Section, SectionProps } from '../section.js'

/** Writes the summary: into this workbook, as a new one, or to disk. */
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

  const run = async (
    what: string,
    then: (bytes: Uint8Array, fileName: string, chart: InsertedChart) => Promise<string>,
  ): Promise<void> => {
    const { record, cells = {}, told = [] } = state.result ?? {}
    if (!record) return
    setDoing(what)
    setDone(undefined)
    const words = await store.attempt(async () => {
      const { runJob } = await import('../../../worker/run-job.js')
      const insertBeside = what === 'insert' ? (await store.host.sheets()).map(({ name }) => name) : undefined
      const written = await runJob({
        kind: 'summary',
        record,
        cells,
        findings: told,
        ...(await photosFor(store.host, state.entries.lists)),
        ...(insertBeside ? { insertBeside } : {}),
      })
      return written.kind === 'written'
        ? then(written.bytes, fileNameOf(record.building.name, record.test.date), written.chart)
        : undefined
    })
    setDoing(undefined)
    setDone(words)
  }

  const { unavailable, kind } = store.host
  return (
    <div class="export">
      {kind === 'excel' ? (
        <>
          <button
            type="button"
            disabled={!ready || doing !== undefined || unavailable.insertWorkbook !== undefined}
            onClick={() =>
              void run('insert', async (bytes, _fileName, chart) => {
                const inserted = await store.host.insertWorkbook(bytes, chart)
                return [`Added ${inserted.sheets.join(', ')} to this workbook.`, ...inserted.notes].join(' ')
              })
            }
          >
            Write into this workbook
          </button>
          <button
            type="button"
            disabled={!ready || doing !== undefined}
            onClick={() =>
              void run('open', async (bytes, fileName) => {
                await store.host.openWorkbook(bytes, fileName)
                return 'The summary is open as a new workbook; save it there.'
              })
            }
          >
            Open as a new workbook
          </button>
        </>
      ) : null}
      <button
        type="button"
        class="main-action"
        disabled={!ready || doing !== undefined}
        onClick={() =>
          void run('download', async (bytes, fileName) => {
            await store.host.download(bytes, fileName)
            return `Downloaded ${fileName}.`
          })
        }
      >
        Download the summary workbook
      </button>
      {unavailable.insertWorkbook && kind === 'excel' ? (
        <p class="hint">{unavailable.insertWorkbook}</p>
      ) : null}
      {why ? <p class="hint">{why}</p> : null}
      <p role="status">{doing ? 'Writing the workbook …' : done}</p>
    </div>
  )
}

/** Photos of leaks and of the set-up; one that a leak names and that is not kept is left to the writer to report. */
async function photosFor(
  { photos }: Host,
  lists: Lists = {},
): Promise<{ photos?: ReadonlyMap<string, Uint8Array> }> {
  const { 'leaks.list': leaks = [], 'site.setUp': setUp = [] } = lists
  const names = photosIn({ 'leaks.list': leaks, 'site.setUp': setUp })
  if (!photos || names.length === 0) return {}
  const read = await Promise.all(names.map(async (name) => [name, await photos.read(name)] as const))
  return { photos: new Map(read.flatMap(([name, bytes]) => (bytes ? [[name, bytes] as const] : []))) }
}

const fileNameOf = (building: string, date: string): string =>
  `${plainName(building) || 'test'}-${date}-summary.xlsx`

export const exportSection: Section = {
  id: 'export',
  title: 'Summary workbook',
  steps: ['result'],
  fold: 'always',
  Body: Export,
}
