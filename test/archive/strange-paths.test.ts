import { symlink, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fileLink } from '../../shared-calc/src/reports/workbook/file-link'
import { commandLine, folder } from '../service/support/command-line'
import { runTool } from '../support/run-tool'
import { makeArchive } from './make-archive'

const register = async (path: string) => {
  const { out, err, code } = await commandLine('register', path, '--json', '--as-of', '2026-10-31')
  return { code, err, register: out === '' ? undefined : JSON.parse(out) }
}

describe('a folder with strange things in it', () => {
  it('is read past a pipe that nobody writes to and a link to what never ends', async () => {
    const here = await folder()
    await makeArchive(here, 1)
    await runTool('mkfifo', [join(here, 'pipe.csv')], 'coreutils')
    await symlink('/dev/zero', join(here, 'zero.csv'))
    const { register: made } = await register(here)
    expect(made.overall.tests).toBe(1)
    expect(made.leftOut).toEqual([
      { file: join(here, 'pipe.csv'), why: 'it is a pipe or a device, not a file' },
      { file: join(here, 'zero.csv'), why: expect.stringMatching(/link/), expected: true, kind: 'link' },
    ])
  })

  it('is read with a layout that is a device, and one that is broken, each named', async () => {
    const here = await folder()
    const [archived] = await makeArchive(here, 1)
    const beside = dirname(archived?.path ?? here)
    await symlink('/dev/zero', join(beside, 'zero.layout.json'))
    await writeFile(join(beside, 'broken.layout.json'), '{"format":')
    const { register: made, code } = await register(here)
    expect(code).toBe(1)
    expect(made.overall.tests).toBe(1)
    const named = (file: string) =>
      made.leftOut.find((one: { file: string }) => one.file === join(beside, file))
    expect(named('zero.layout.json').why).toBe('the layout cannot be used: it is not a regular file')
    expect(named('broken.layout.json').why).toMatch(/^the layout cannot be used: format: line 1, column 11/)
  })

  it('is named by what it is when a pipe itself is given', async () => {
    const pipe = join(await folder(), 'pipe.csv')
    await runTool('mkfifo', [pipe], 'coreutils')
    const { code, err } = await register(pipe)
    expect(code).toBe(2)
    expect(err.join('\n')).toMatch(/pipe\.csv: it is a pipe or a device, not a file/)
  })
})

// Source: RFC 3986, 4.2: a relative path whose first part holds a colon is written with "./" before it.
describe('the link of a file', () => {
  const base = 'file:///office/register.xlsx'
  it.each([
    ['javascript:alert(1).xlsx', 'file:///office/javascript:alert(1).xlsx'],
    ['https://evil.example/a.xlsx', 'file:///office/https://evil.example/a.xlsx'],
    ['//evil.example/share/a.xlsx', 'file:///evil.example/share/a.xlsx'],
    ['2026/Plot 7 #2?.xlsx', 'file:///office/2026/Plot%207%20%232%3F.xlsx'],
    ['../old/a.xlsx', 'file:///old/a.xlsx'],
    ['/archive/a.xlsx', 'file:///archive/a.xlsx'],
    ['C:\\archive\\a.xlsx', 'file:///C:/archive/a.xlsx'],
    ['half \ud83d.xlsx', 'file:///office/half%20%EF%BF%BD.xlsx'],
  ])('%s leads to a file and nowhere else', (file, address) => {
    expect(new URL(fileLink(file), base).href).toBe(address)
  })
})
