import { access, mkdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { evaluate } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line'
import { makeArchive } from './make-archive'
import { Tamperer, withNumber } from './tamper'

describe('draughtbook register', () => {
  it('makes the register of a folder, names what it could not read, and ends with 1', async () => {
    const archive = await folder()
    const made = await makeArchive(archive, 4)
    const [first] = made
    if (!first) throw new Error('nothing was made')
    const whole = await writeSummaryWorkbook(first.record)
    await writeFile(join(archive, 'cut.xlsx'), whole.slice(0, 6000))
    await writeFile(join(archive, 'photo.jpg'), 'no picture')
    await writeFile(join(archive, '~$open.xlsx'), '')
    const out = join(archive, 'register.xlsx')
    const {
      code,
      err,
      out: said,
    } = await commandLine('register', archive, '--as-of', '2026-10-31', '--out', out)
    expect(code).toBe(1)
    expect(err).toEqual([expect.stringMatching(/cut\.xlsx: the file is incomplete or damaged/)])
    expect(said).toMatch(/^4 tests: /)
    // The register lies in the folder now: it is known, and is not read as a test.
    const again = await commandLine('register', archive, '--as-of', '2026-10-31', '--json')
    const register = JSON.parse(again.out)
    expect(register.rows).toHaveLength(4)
    expect(register.leftOut.map(({ why }: { why: string }) => why).sort()).toEqual([
      'not a workbook or a CSV file',
      'temporary file of an open workbook',
      expect.stringMatching(/incomplete/),
      'this is a Draughtbook register, not a test',
    ])
    expect(register.leftOut.map(({ kind }: { kind?: string }) => kind ?? 'could not be read').sort()).toEqual(
      ['could not be read', 'other format', 'own report', 'temporary or hidden file'],
    )
    for (const { path, record } of made)
      expect(register.rows.find(({ file }: { file: string }) => file === path)?.results.n50).toBe(
        evaluate(record).results.n50?.value,
      )
  })

  it('writes nothing with --strict where a file could not be read; other formats do not matter', async () => {
    const archive = await folder()
    const [first] = await makeArchive(archive, 1)
    await writeFile(join(archive, 'photo.jpg'), 'no picture')
    await writeFile(join(archive, '~$open.xlsx'), '')
    const out = join(archive, 'register.xlsx')
    expect((await commandLine('register', archive, '--strict', '--out', out)).code).toBe(0)
    await rm(out)
    await writeFile(join(archive, 'cut.xlsx'), 'no workbook')
    const strict = await commandLine('register', archive, '--strict', '--out', out)
    expect(strict.code).toBe(2)
    expect(strict.err.join('\n')).toMatch(/cut\.xlsx: .*\n.*with --strict no register was written/)
    await expect(access(out)).rejects.toThrow()
    // Where nothing could be read there is no register either.
    await rm(first?.path ?? '')
    expect((await commandLine('register', archive, '--out', out)).code).toBe(2)
    await expect(access(out)).rejects.toThrow()
  })

  it('ends with 2 and one line where it cannot be carried out', async () => {
    const archive = await folder()
    await mkdir(join(archive, 'empty'))
    await writeFile(join(archive, 'some.xlsx'), '')
    const cases: [string[], RegExp][] = [
      [['register', archive], /name the register with --out/],
      [['register', archive, '--month', '2026-13', '--json'], /month such as 2026-10/],
      [['register', archive, '--as-of', '2026-02-30', '--json'], /date such as/],
      [['register', join(archive, 'none'), '--json'], /there is no such file or folder/],
      [['register', join(archive, 'empty'), '--json'], /no workbook was found in/],
      [['register', '--json'], /no PATH was given/],
      [['register', archive, '--json', '--queue', 'http://x'], /must name a Redis/],
      [['rerun', archive, '--key', join(archive, 'none.pub')], /no such file/],
    ]
    for (const [args, said] of cases) {
      const { code, err } = await commandLine(...args)
      expect([args.join(' '), code]).toEqual([args.join(' '), 2])
      expect(err).toHaveLength(1)
      expect(err[0]).toMatch(said)
    }
  })
})

describe('draughtbook rerun', () => {
  it('ends with 0 where all agree, and with 1 naming file, field and cell where one does not', async () => {
    const archive = await folder()
    const [first] = await makeArchive(archive, 3)
    if (!first) throw new Error('nothing was made')
    const good = await commandLine('rerun', archive)
    expect([good.code, good.out]).toEqual([
      0,
      expect.stringMatching(/^3 tests re-run: 3 exactly as issued\nSignatures: 3 not signed$/),
    ])
    const book = new Tamperer(await writeSummaryWorkbook(first.record))
    const cell = book.cells().find(({ sheet, xml }) => sheet === 'Readings' && /<v>-?6\d\.\d<\/v>/.test(xml))
    if (!cell) throw new Error('no reading')
    await writeFile(first.path, book.with(cell, withNumber(cell, -60.6)))
    const bad = await commandLine('rerun', archive, '--out', join(archive, 'rerun.xlsx'))
    expect(bad.code).toBe(1)
    const reading = 'depressurisation, reading 1, pressure difference'
    expect(bad.out).toContain(
      `${first.path}: 1 input changed after issue\n  ${reading} (Readings!${cell.address}): `,
    )
    expect(bad.out).toMatch(
      / {2}depressurisation, reading 1.*: issued −?6\d\.\d Pa, in the file −60\.6 Pa\n {4}result: q50: issued/,
    )
  })
})
