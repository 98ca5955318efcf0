import { copyFile, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line'
import { englishForm } from './logs/english-form'
import { sheetPerTest } from './logs/sheet-per-test'

async function here(...logs: (typeof englishForm)[]) {
  const path = await folder()
  for (const { fileName, write } of logs) await writeFile(join(path, fileName), await write())
  return path
}

describe('a test log on the command line', () => {
  it('is read as it is understood while no layout fits it, and its figures are those of its layout', async () => {
    const path = await here(englishForm)
    const file = join(path, englishForm.fileName)
    const { code, out, err } = await commandLine('evaluate', file, '--json')
    expect([code, err]).toEqual([0, []])
    await writeFile(join(path, 'form.json'), JSON.stringify(englishForm.layout))
    const byLayout = await commandLine('evaluate', file, '--json', '--layout', join(path, 'form.json'))
    const n50 = (text: string) => JSON.parse(text).results.n50.value
    expect(n50(out)).toBeCloseTo(n50(byLayout.out), 9)
  })

  it('is evaluated by its layout, with the cells in the findings', async () => {
    const path = await here(englishForm)
    await writeFile(join(path, 'form.json'), JSON.stringify(englishForm.layout))
    const { code, out, err } = await commandLine(
      'evaluate',
      join(path, englishForm.fileName),
      '--layout',
      join(path, 'form.json'),
    )
    expect([code, err]).toEqual([0, []])
    expect(out).toContain('Plot 12')
    expect(out).toMatch(/The value in hPa was converted .*\n +where: 'Air test'!B6/)
  })

  it('says what it was understood as, and keeps the answers for every log of its make', async () => {
    const path = await here(englishForm)
    const file = join(path, englishForm.fileName)
    const kept = ['--target', 'passive-house-new', '--out', join(path, 'form.layout.json')]
    const { code, err, out } = await commandLine('layout', file, ...kept)
    expect([code, err]).toEqual([0, []])
    expect(out).toMatch(/'Air test'!B4 {2}Volume.* → internal volume$/m)
    const layout = JSON.parse(await readFile(join(path, 'form.layout.json'), 'utf8'))
    expect(layout).toMatchObject({
      format: 'draughtbook/layout@1',
      answers: { 'target.preset': 'passive-house-new' },
    })
    const evaluated = await commandLine('evaluate', file, '--json')
    expect(evaluated.code).toBe(0)
    expect(JSON.parse(evaluated.out).verdict.target).toMatchObject({ preset: 'passive-house-new' })
    expect(evaluated.out).toMatch(/read with the answers saved in the layout \\"form\\"/)
  })

  it('says as a layout what was left out of it', async () => {
    const path = await folder()
    const file = join(path, 'list.xlsx')
    await copyFile(new URL('./samples/18-filtered-list.xlsx', import.meta.url), file)
    const { out } = await commandLine('layout', file)
    expect(out).toMatch(/Findings\n[\s\S]*left out: "J-77"/)
  })

  it('that is a series which hardly ever holds steady says so', async () => {
    const path = await folder()
    const file = join(path, 'drift.csv')
    const lines = ['Volume;300;m3', 'Date;2026-05-04', '', 'time_s;building_pa;flow_m3h']
    for (let time = 0; time < 900; time++) {
      const pressure = -(62 - (40 * time) / 900) + 2.5 * Math.sin(time / 3)
      lines.push([time, pressure.toFixed(2), (30 * Math.abs(pressure) ** 0.65).toFixed(1)].join(';'))
    }
    await writeFile(file, lines.join('\n'))
    const { code, err } = await commandLine('evaluate', file)
    expect(code).toBe(2)
    expect(err.join('\n')).toContain('steady for 20 s only once')
  })

  it('comes with others: what cannot be read is named, the rest is done, exit 1', async () => {
    const path = await here(englishForm, sheetPerTest)
    await writeFile(
      join(path, 'form.layout.json'),
      JSON.stringify({ ...englishForm.layout, fingerprint: { sheets: ['Air test'] } }),
    )
    await writeFile(
      join(path, 'site.layout.json'),
      JSON.stringify({ ...sheetPerTest.layout, fingerprint: { sheets: ['Cover', 'Plot *'] } }),
    )
    await writeFile(join(path, 'broken.xlsx'), 'not a workbook')
    const files = [englishForm.fileName, 'broken.xlsx', sheetPerTest.fileName].map((name) => join(path, name))
    const { code, out, err } = await commandLine('evaluate', ...files, '--json')
    expect([code, err.length]).toEqual([1, 1])
    expect(err[0]).toMatch(/broken\.xlsx: .*text, not a workbook/)
    expect(JSON.parse(out)).toHaveLength(1 + 3)
    expect((await commandLine('evaluate', ...files, '--out', join(path, 'x.xlsx'))).code).toBe(2)
  })

  it('names file, sheet and cell of every fault', async () => {
    const path = await here(englishForm)
    await writeFile(
      join(path, 'form.json'),
      JSON.stringify({
        ...englishForm.layout,
        fields: englishForm.layout.fields.map((field) =>
          field.path === 'building.volume_m3' ? { ...field, at: { cell: 'B2' } } : field,
        ),
      }),
    )
    const { code, err } = await commandLine(
      'check',
      join(path, englishForm.fileName),
      '--layout',
      join(path, 'form.json'),
    )
    expect(code).toBe(2)
    expect(err).toEqual([
      expect.stringMatching(
        /Plot 12 fabric test\.xlsx: 'Air test'!B2: internal volume: "Plot 12" is not a number/,
      ),
    ])
  })
})
