import { execFileSync } from 'node:child_process'
import { readdir, writeFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { commandLine, folder } from './support/command-line'

describe('a file that cannot be read', () => {
  it.each([
    { what: 'a missing file', name: 'missing.json', says: /there is no such file/ },
    { what: 'a missing workbook', name: 'missing.xlsx', says: /there is no such file/ },
    { what: 'a folder', name: '.', says: /folder/ },
    { what: 'a device that never ends', name: '/dev/zero', says: /not a regular file/ },
  ])('$what ends with one line and exit 2', async ({ name, says }) => {
    const here = await folder()
    const { code, out, err } = await commandLine('evaluate', resolve(here, name))
    expect([code, out, err.length]).toEqual([2, '', 1])
    expect(err[0]).toMatch(says)
  })

  it.each([
    ['a log', (pipe: string) => ['evaluate', pipe]],
    ['the register of the month before', (pipe: string) => ['register', '.', '--json', '--previous', pipe]],
    ['a public key', (pipe: string) => ['rerun', '.', '--key', pipe]],
  ])('a pipe that nobody writes to in place of %s is not waited for', async (_what, args) => {
    const pipe = join(await folder(), 'pipe.xlsx')
    execFileSync('mkfifo', [pipe])
    const { code, err } = await commandLine(...args(pipe))
    expect(code).toBe(2)
    expect(err.join()).toContain(`${pipe}: it is not a regular file`)
  })

  it.each([
    { what: 'text called .xlsx', name: 'log.xlsx', bytes: 'no workbook at all' },
    { what: 'a zip that is no workbook', name: 'log.xlsx', bytes: 'PK\x05\x06'.padEnd(22, '\0') },
    { what: 'bytes that are no UTF-8', name: 'log.json', bytes: Buffer.from([0x7b, 0x22, 0xff, 0xfe, 0x7d]) },
    { what: 'a picture', name: 'log.png', bytes: '\x89PNG\r\n' },
    { what: 'an empty workbook file', name: 'log.xlsx', bytes: '' },
  ])('$what ends with one line and exit 2, and nothing is written', async ({ name, bytes }) => {
    const here = await folder()
    const file = join(here, name)
    await writeFile(file, bytes)
    const { code, out, err } = await commandLine('evaluate', file)
    expect([code, out, err.length]).toEqual([2, '', 1])
    expect(err[0]).toMatch(new RegExp(`^${file.replaceAll('.', '\\.')}: .{10,}`))
    expect(await readdir(here)).toEqual([name])
  })

  it('says what is wrong with the command line itself', async () => {
    expect(await commandLine()).toMatchObject({ code: 2, out: '' })
    expect(await commandLine('evaluat', 'x.json')).toMatchObject({ code: 2, out: '' })
    expect(await commandLine('evaluate')).toMatchObject({ code: 2, out: '' })
    expect(await commandLine('evaluate', 'x.json', '--colour')).toMatchObject({ code: 2, out: '' })
    expect((await commandLine('--help')).code).toBe(0)
  })
})
