import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makePlan, type PlanRequest, parsePlan, withFirmsEquipment } from '@draughtbook/shared-calc'
import { describe, expect, it, onTestFinished } from 'vitest'
import { readLists } from '../../addin/src/calc/read-lists.js'
import { Told } from '../../addin/src/calc/told.js'
import { firmsEquipment } from '../../addin/src/service/firms-equipment.js'
import { createApp } from '../../service/src/app.js'
import { defaultSettings } from '../../service/src/settings/settings.js'
import { listen } from '../service/support/listen.js'
import { planRequest } from './support/plan-request.js'

const device = {
  format: 'draughtbook/device@1' as const,
  name: 'invented fan of the firm',
  serial: 'DEMO-9',
  calibrationDue: '2027-03-01',
  referenceDensity_kg_m3: 1.2041,
  ranges: [
    { label: 'A', coefficient: 6.2, exponent: 0.52, minimumPressure_Pa: 20, maximumPressure_Pa: 300 },
    { label: 'B', minimumFlow_m3_h: 60, maximumFlow_m3_h: 500 },
  ],
}
const gauge = { format: 'draughtbook/gauge@1' as const, name: 'invented gauge', calibrationDue: '2026-10-01' }

async function serviceWithLibrary(): Promise<URL> {
  const library = await mkdtemp(join(tmpdir(), 'draughtbook-library-'))
  onTestFinished(() => rm(library, { recursive: true, force: true }))
  for (const [kind, entry] of [
    ['devices', device],
    ['gauges', gauge],
  ] as const) {
    await mkdir(join(library, kind))
    await writeFile(join(library, kind, 'one.json'), JSON.stringify(entry))
  }
  return new URL(await listen(createApp({ settings: { ...defaultSettings, library } })))
}

describe("the firm's devices in the pane", () => {
  it('give the same plan as when the service puts them in', async () => {
    const { devices, gauges } = await firmsEquipment(await serviceWithLibrary())
    const draft: Record<string, unknown> = { test: {} }
    const told = new Told()
    expect(readLists(draft, { 'plan.devices': devices, 'plan.gauges': gauges }, told)).toStrictEqual([])
    expect(told.findings()).toStrictEqual([])
    const { devices: _, gauges: _gauges, ...bare } = planRequest.plan
    const request: PlanRequest = { ...planRequest, plan: bare }
    const typed = parsePlan({ ...request, plan: { ...bare, ...(draft.plan as object) } })
    expect(makePlan(typed)).toStrictEqual(makePlan(withFirmsEquipment(request, [device], [gauge])))
    expect(makePlan(typed).devices).toHaveLength(1)
  })

  it('a service without a library, or none at all, is said in words', async () => {
    const without = new URL(await listen(createApp()))
    await expect(firmsEquipment(without)).rejects.toThrow('The service has no library of devices.')
    await expect(firmsEquipment(new URL('http://127.0.0.1:9/'))).rejects.toThrow(
      'The service cannot be reached',
    )
  })
})
