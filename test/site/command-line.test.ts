import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { makePlan, measureTakeOff, type TakeOff } from '@draughtbook/shared-calc'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line.js'
import { house } from './support/house.js'
import { planRequest } from './support/plan-request.js'

async function fileWith(content: unknown, name = 'input.json') {
  const here = await folder()
  const file = join(here, name)
  await writeFile(file, JSON.stringify(content))
  return { here, file }
}
const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value))
const sheetsOf = async (path: string) => {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.readFile(path)
  return workbook.worksheets.map(({ name }) => name)
}

describe('draughtbook volume', () => {
  const request = { format: 'draughtbook/take-off@1', name: 'Invented house', takeOff: house.takeOff }

  it('prints both volumes, areas, what differs, and the findings', async () => {
    const { file } = await fileWith(request)
    const { code, out, err } = await commandLine('volume', file)
    expect([code, err]).toEqual([0, []])
    expect(out).toMatch(/Net internal volume +319\.16 m³ \(standard uncertainty 2\.12 m³\)/)
    expect(out).toMatch(/Overall internal volume +336\.65 m³/)
    expect(out).toMatch(
      /"floor between the storeys" \(17\.5 m³\) is included in the overall internal volume only/,
    )
    expect(out).toMatch(/where: stated volume\n/)
  })

  it('prints the result and nothing else with --json, from a record too', async () => {
    const { file, here } = await fileWith(house)
    const { out } = await commandLine('volume', file, '--json')
    expect(JSON.parse(out)).toEqual(json(measureTakeOff(house.takeOff as TakeOff)))
    expect(await readdir(here)).toEqual(['input.json'])
  })

  it('writes a workbook with --out and leaves no temporary file', async () => {
    const { file, here } = await fileWith(request)
    const out = join(here, 'volume.xlsx')
    expect((await commandLine('volume', file, '--out', out)).code).toBe(0)
    expect(await sheetsOf(out)).toEqual(['Volume', 'Inputs', 'Working'])
    expect((await readdir(here)).sort()).toEqual(['input.json', 'volume.xlsx'])
  })

  it('names file and field of a fault, one line each, and ends with 2', async () => {
    const { file } = await fileWith({
      ...request,
      takeOff: { spaces: [{ ...house.takeOff?.spaces[0], countsIn: 'all' }], scaleUncertainty: 3 },
    })
    const { code, out, err } = await commandLine('volume', file)
    expect([code, out]).toEqual([2, ''])
    expect(err).toEqual([
      `${file}: takeOff.spaces[0].countsIn: countsIn must be "both", "net" or "overall internal"`,
      `${file}: takeOff.scaleUncertainty: relative standard uncertainty of the scale is 3; it must be between 0 and 1 (a fraction, not per cent)`,
    ])
  })

  it('refuses a record without a take-off, and a file that is no JSON', async () => {
    const { takeOff: _, ...without } = house
    const { file } = await fileWith(without)
    expect((await commandLine('volume', file)).err).toEqual([`${file}: takeOff: the record has no take-off`])
    const { file: text } = await fileWith(request, 'rooms.txt')
    expect((await commandLine('volume', text)).err).toEqual([
      `${text}: only a .json file can be read here; evaluate and check read test logs`,
    ])
  })
})

describe('draughtbook plan', () => {
  it('prints what to set and expect, the devices, and the findings', async () => {
    const { file } = await fileWith(planRequest)
    const { code, out } = await commandLine('plan', file)
    expect(code).toBe(0)
    expect(out).toMatch(/Target +Passive house, new: at most 192\.0 m³\/h at 50 Pa/)
    expect(out).toMatch(/60\.0 Pa +−61\.2 Pa +221 +226 +231 +middle/)
    expect(out).toMatch(/Use a smaller device/)
    expect(out).toMatch(/Calibration of "large fan" expires on 1 November 2026/)
  })

  it('prints the plan alone with --json, and writes the plan as a sheet for the site with --out', async () => {
    const { file, here } = await fileWith(planRequest)
    const path = join(here, 'plan.xlsx')
    const { out } = await commandLine('plan', file, '--json', '--out', path)
    expect(JSON.parse(out)).toEqual(json(makePlan(planRequest)))
    expect((await sheetsOf(path)).slice(0, 2)).toEqual(['Plan', 'Checklist'])
  })

  it("takes the firm's devices where the plan names none", async () => {
    const { devices: _, gauges: _gauges, ...bare } = planRequest.plan
    const { file, here } = await fileWith({ ...planRequest, plan: bare })
    await mkdir(join(here, 'library', 'devices'), { recursive: true })
    const device = {
      format: 'draughtbook/device@1',
      name: 'the firm’s small fan',
      calibrationDue: '2027-05-01',
      ranges: [{ label: 'A', minimumFlow_m3_h: 50, maximumFlow_m3_h: 500 }],
    }
    await writeFile(join(here, 'library', 'devices', 'small.json'), JSON.stringify(device))
    const { out } = await commandLine('plan', file, '--library', join(here, 'library'), '--json')
    expect(JSON.parse(out)).toMatchObject({
      chosenDevice: 'the firm’s small fan',
      devices: [{ reaches: true }],
    })
  })

  it('never leaves half a workbook: a folder that is not there is named', async () => {
    const { file, here } = await fileWith(planRequest)
    const { code, err } = await commandLine('plan', file, '--out', join(here, 'none', 'plan.xlsx'))
    expect(code).toBe(2)
    expect(err[0]).toMatch(/cannot be written: there is no folder .*none/)
    expect(await readFile(file, 'utf8')).toBe(JSON.stringify(planRequest))
  })
})
