import { plainName } from '../../../../host/download.js'
import type { Host } from '../../../../host/host.js'
import { firmsHead } from '../../../../service/firms-head.js'
import type { ReportParts } from '../../../../worker/messages.js'
import { type Lists, photosIn } from '../../lists.js'
import type { TestStore } from '../../store.js'

/** What the files of the test on show are written from, and how they are called; undefined where there is no result. */
export async function reportParts(
  store: TestStore,
): Promise<{ parts: ReportParts; name: string; notes: string[] } | undefined> {
  const { result, entries } = store.state
  const { record, cells = {}, told = [] } = result ?? {}
  if (!record) return undefined
  const [photos, { firm, note }] = await Promise.all([
    photosFor(store.host, entries.lists),
    firmsHead(store.base),
  ])
  return {
    parts: { record, cells, findings: told, ...(photos && { photos }), ...(firm && { firm }) },
    name: `${plainName(record.building.name) || 'test'}-${record.test.date}-summary`,
    notes: note === undefined ? [] : [note],
  }
}

/** Photos of leaks and of the set-up; one that a leak names and that is not kept is left to the writer to report. */
async function photosFor(
  { photos }: Host,
  lists: Lists = {},
): Promise<ReadonlyMap<string, Uint8Array> | undefined> {
  const { 'leaks.list': leaks = [], 'site.setUp': setUp = [] } = lists
  const names = photosIn({ 'leaks.list': leaks, 'site.setUp': setUp })
  if (!photos || names.length === 0) return undefined
  const read = await Promise.all(names.map(async (name) => [name, await photos.read(name)] as const))
  return new Map(read.flatMap(([name, bytes]) => (bytes ? [[name, bytes] as const] : [])))
}
