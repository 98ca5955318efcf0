import { mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { writeAtomically } from '../../service/src/files/write-atomically'
import { folder } from './support/command-line'
import { listen } from './support/listen'
import { demoRecord } from './support/record'
import { settings } from './support/settings'
import { runCommand, spawnService } from './support/spawned'

const DEVICE = { format: 'draughtbook/device@1', name: 'Fan A', ranges: [] }

/** A disk of its own size on a folder, for the process that is started after it. */
const smallDisk = (path: string, kB: number) => `mount -t tmpfs -o size=${kB}k tmpfs '${path}'`

async function withDevice() {
  const root = await folder()
  await mkdir(join(root, 'devices'))
  await writeFile(join(root, 'devices', 'fan-a.json'), JSON.stringify(DEVICE))
  return root
}

const put = (base: string, id: string, value: unknown) =>
  fetch(`${base}/v1/library/devices/${id}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json', 'if-none-match': '*' },
    body: JSON.stringify(value),
  })

describe('a full disk', () => {
  it('ends evaluate with one clear line; what was there stays, and no half file is left', async () => {
    const here = await folder()
    await writeFile(join(here, 'x.json'), JSON.stringify(demoRecord()))
    const disk = join(here, 'disk')
    await mkdir(disk)
    // The old workbook is copied onto the small disk, and listed afterwards, inside the same namespace.
    const first = `${smallDisk(disk, 32)} && echo old > '${disk}/y.xlsx'`
    const { code, out, err } = await runCommand(
      ['evaluate', join(here, 'x.json'), '--out', join(disk, 'y.xlsx'), '--force'],
      first,
    )
    expect([code, out]).toEqual([2, ''])
    expect(err.trim()).toBe(`draughtbook: ${join(disk, 'y.xlsx')} cannot be written: the disk is full`)
  })

  it('leaves the old file and no other when a write fails half way', async () => {
    const here = await folder()
    const file = join(here, 'kept.json')
    await writeFile(file, 'old')
    // A name that is too long fails at the temporary file; a folder in the place of the file at the rename.
    await mkdir(join(here, 'folder'))
    await expect(writeAtomically(join(here, 'folder'), 'new')).rejects.toThrow()
    await expect(writeAtomically(join(here, 'x'.repeat(300)), 'new')).rejects.toThrow(/ENAMETOOLONG/)
    expect((await readdir(here)).sort()).toEqual(['folder', 'kept.json'])
    expect(await readFile(file, 'utf8')).toBe('old')
  })

  it('is 507 for the library; nothing is changed, and reading goes on', async () => {
    const root = await folder()
    const { base } = await spawnService({ args: ['--library', root], first: smallDisk(root, 48) })
    const statuses: number[] = []
    for (let i = 0; i < 12 && statuses.at(-1) !== 507; i++)
      statuses.push((await put(base, `fan-${i}`, { ...DEVICE, notes: 'x'.repeat(3900) })).status)
    expect(statuses.at(-1)).toBe(507)
    expect(statuses.slice(0, -1).every((status) => status === 201)).toBe(true)
    const answer = await put(base, 'one-more', { ...DEVICE, notes: 'x'.repeat(3900) })
    expect(await answer.json()).toMatchObject({
      title: 'The library cannot be written',
      detail: 'nothing was changed: the disk is full',
    })
    const list = (await (await fetch(`${base}/v1/library/devices`)).json()) as {
      entries: unknown[]
      faults: unknown[]
    }
    expect(list.entries.length).toBe(statuses.length - 1)
    expect(list.faults).toEqual([])
  })
})

describe('the library’s folder', () => {
  it('may be read-only: reading goes on, a change is 503 with the reason', async () => {
    const root = await withDevice()
    const { base } = await spawnService({
      args: ['--library', root],
      first: `mount --bind '${root}' '${root}' && mount -o remount,bind,ro '${root}'`,
    })
    expect(await (await fetch(`${base}/v1/library/devices/fan-a`)).json()).toEqual(DEVICE)
    const answer = await put(base, 'fan-b', DEVICE)
    expect(answer.status).toBe(503)
    expect(await answer.json()).toMatchObject({ detail: 'nothing was changed: the disk is read-only' })
    expect(await readdir(join(root, 'devices'))).toEqual(['fan-a.json'])
  })

  it('may go: what was read stays in use, and the fault is said', async () => {
    const root = await withDevice()
    const base = await listen(createApp({ settings: settings({ library: root }) }))
    const list = async () =>
      (await (await fetch(`${base}/v1/library/devices`)).json()) as {
        entries: { id: string }[]
        faults: unknown[]
      }
    expect((await list()).entries.length).toBe(1)
    await rename(root, `${root}-gone`)
    await expect.poll(async () => (await list()).faults.length, { timeout: 4000 }).toBe(1)
    expect((await list()).entries.map(({ id }) => id)).toEqual(['fan-a'])
    expect((await list()).faults[0]).toMatchObject({
      message: 'there is no such file or folder',
      lastGood: true,
    })
    const answer = await put(base, 'fan-b', DEVICE)
    expect(answer.status).toBe(503)
    await rename(`${root}-gone`, root)
    await expect.poll(async () => (await list()).faults.length, { timeout: 4000 }).toBe(0)
    expect((await put(base, 'fan-b', DEVICE)).status).toBe(201)
  })
})
