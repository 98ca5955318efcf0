import type { LayoutInput } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { AskedLayouts } from '../../addin/src/service/firms-layouts'
import { keepInLibrary } from '../../addin/src/service/keep-in-library'
import { ServiceClient } from '../../addin/src/service/service-client'
import { createApp } from '../../service/src/app'
import { folder } from './support/command-line'
import { listen } from './support/listen'
import { settings } from './support/settings'

const open = async (library?: string) =>
  new URL(`${await listen(createApp({ settings: settings(library === undefined ? {} : { library }) }))}/`)

const answers = (name: string, label: string, unit: string): LayoutInput => ({
  format: 'draughtbook/layout@1',
  name,
  fingerprint: { labels: [label, 'Fan flow'] },
  fields: [],
  answers: { 'flow.unit': unit },
})

describe('keeping answers about logs in the firm’s library', () => {
  it('replaces answers for the same labels, and gives others of the same name an id of their own', async () => {
    const base = await open(await folder())
    const kept = [
      await keepInLibrary(base, answers('logs like Plot 1.xlsx', 'House', 'l/s')),
      await keepInLibrary(base, answers('logs like Plot 1.xlsx', 'Site', 'cfm')),
      await keepInLibrary(base, answers('logs like Haus 3.xlsx', 'House', 'm³/h')),
    ]
    expect(kept).toEqual([
      { id: 'logs-like-plot-1-xlsx', replaced: false },
      { id: 'logs-like-plot-1-xlsx-2', replaced: false },
      { id: 'logs-like-plot-1-xlsx', replaced: true },
    ])
    const entries = await new ServiceClient(base).library('layouts')
    expect(entries.map(({ id, value }) => [id, value.answers?.['flow.unit']])).toEqual([
      ['logs-like-plot-1-xlsx', 'm³/h'],
      ['logs-like-plot-1-xlsx-2', 'cfm'],
    ])
  })

  it.each(['日誌', 'x'.repeat(200), '— Prüfbogen Süd —'])('finds an id for the name %s', async (name) => {
    const { id } = await keepInLibrary(await open(await folder()), answers(name, 'House', 'l/s'))
    expect(id).toMatch(/^[a-z0-9][a-z0-9-]{0,63}$/)
  })

  it('never replaces a layout that names cells, which is somebody’s own work', async () => {
    const base = await open(await folder())
    const own: LayoutInput = {
      ...answers('Our sheet', 'House', 'l/s'),
      fields: [{ path: 'building.name', at: { label: 'House' } }],
    }
    await new ServiceClient(base).save('layouts', 'our-sheet', own, undefined)
    expect(await keepInLibrary(base, answers('Our sheet', 'House', 'cfm'))).toEqual({
      id: 'our-sheet-2',
      replaced: false,
    })
  })

  it('says so in words where there is no library, and where there is no service', async () => {
    await expect(keepInLibrary(await open(), answers('a', 'House', 'l/s'))).rejects.toThrow(
      /^Not kept in the firm’s library: /,
    )
    await expect(keepInLibrary(new URL('http://127.0.0.1:1/'), answers('a', 'House', 'l/s'))).rejects.toThrow(
      'Not kept in the firm’s library: the service cannot be reached.',
    )
  })
})

describe('the firm’s layouts, asked for once', () => {
  it('are there with the answer, and say whether this access may change them', async () => {
    const base = await open(await folder())
    await keepInLibrary(base, answers('a', 'House', 'l/s'))
    const asked = new AskedLayouts(base, 30_000)
    expect(await asked.soon()).toMatchObject({ layouts: [{ name: 'a' }], late: false })
    expect(await asked.answer).toMatchObject({ mayChange: true })
  })

  it('are none where the service has no library or cannot be reached, without waiting', async () => {
    const none = new AskedLayouts(await open(), 30_000)
    expect(await none.soon()).toEqual({ layouts: [], late: false })
    expect(await none.answer).toEqual({ layouts: [], mayChange: false })
    const unreachable = new AskedLayouts(new URL('http://127.0.0.1:1/'), 30_000)
    expect(await unreachable.soon()).toEqual({ layouts: [], late: false })
    expect(await unreachable.answer).toBeUndefined()
  })
})
