import { execFileSync, spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

const SCRIPT = fileURLToPath(new URL('install-tools.sh', import.meta.url))
const TOOLS = [
  'chromium',
  'soffice',
  'pdftoppm',
  'pdftotext',
  'ssconvert',
  'redis-server',
  'openssl',
  'systemd-analyze',
]
const ALL_FONTS = 'echo DejaVu Sans; echo Liberation Serif; echo Carlito'

let bin: string
beforeEach(() => {
  bin = mkdtempSync(join(tmpdir(), 'machine-'))
  for (const name of ['env', 'grep', 'mktemp', 'rm', 'tail', 'cat']) {
    symlinkSync(execFileSync('which', [name], { encoding: 'utf8' }).trim(), join(bin, name))
  }
})
afterEach(() => rmSync(bin, { recursive: true }))

/** A machine that has just these programs: name → what it does when it is called. Nothing real is installed. */
function runOn(programs: Record<string, string>) {
  for (const [name, body] of Object.entries(programs)) {
    writeFileSync(join(bin, name), `#!/bin/bash\n${body}\n`)
    chmodSync(join(bin, name), 0o755)
  }
  const env = { PATH: bin, TMPDIR: bin }
  return spawnSync('/bin/bash', [SCRIPT], { env, encoding: 'utf8' })
}

const calls = () => readFileSync(join(bin, 'calls'), 'utf8').trim().split('\n')
const note = (name: string) => `echo "${name} $*" >>"${join(bin, 'calls')}"`
const all = Object.fromEntries(TOOLS.map((tool) => [tool, 'exit 0']))
const root = 'echo 0'

describe('install-tools.sh', () => {
  it('does nothing, and asks for no rights, where every tool and font is there', () => {
    const run = runOn({ ...all, 'fc-list': ALL_FONTS, 'apt-get': 'exit 9' })
    expect([run.status, run.stdout]).toEqual([0, 'Test tools: all there.\n'])
  })

  it('installs just what is missing, after one update, as root without sudo', () => {
    const { pdftotext: _, ...some } = all
    const run = runOn({ ...some, 'fc-list': 'echo DejaVu Sans', id: root, 'apt-get': note('apt-get') })
    expect([run.status, run.stderr]).toEqual([0, ''])
    expect(calls()).toEqual([
      'apt-get -q -y update',
      'apt-get -q -y install --no-install-recommends poppler-utils fonts-liberation fonts-crosextra-carlito',
    ])
  })

  it('takes the whole browser where Debian has no Chromium without windows', () => {
    const { chromium: _, ...some } = all
    const older = { 'apt-get': note('apt-get'), 'apt-cache': 'exit 100' }
    const run = runOn({ ...some, 'fc-list': ALL_FONTS, id: root, ...older })
    expect([run.status, run.stderr]).toEqual([0, ''])
    expect(calls().at(-1)).toBe('apt-get -q -y install --no-install-recommends chromium')
  })

  it('goes through sudo for anyone else', () => {
    const sudo = `${note('sudo')}; exec "$@"`
    const run = runOn({ ...all, 'fc-list': 'true', id: 'echo 1000', sudo, 'apt-get': note('apt-get') })
    expect(run.status).toBe(0)
    expect(calls()[0]).toBe('sudo env DEBIAN_FRONTEND=noninteractive apt-get -q -y update')
    expect(calls().at(-1)).toBe(
      'apt-get -q -y install --no-install-recommends fonts-dejavu fonts-liberation fonts-crosextra-carlito',
    )
  })

  it.each([
    ['neither the tool nor apt-get is there', {}, /no apt-get to install them with: chromium-headless-shell/],
    [
      'it is neither root nor able to become so',
      { 'apt-get': 'exit 0', id: 'echo 1000' },
      /as root: apt-get/,
    ],
    ['apt-get fails', { 'apt-get': 'echo no route; exit 100', id: root }, /no route\napt-get update failed/],
  ])('fails, naming what is missing, when %s', (_, machine, message) => {
    const run = runOn({ 'fc-list': ALL_FONTS, ...machine })
    expect(run.status).toBe(1)
    expect(run.stderr).toMatch(message)
    expect(run.stderr).toContain(
      'chromium-headless-shell libreoffice-calc poppler-utils gnumeric redis-server',
    )
  })
})
