import { execFile, spawn } from 'node:child_process'
import { once } from 'node:events'
import { cp, readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { describe, expect, it, onTestFinished } from 'vitest'
import { runTool } from '../support/run-tool'
import { folder } from './support/command-line'
import { postJson } from './support/listen'
import { demoRecord } from './support/record'

const run = promisify(execFile)

/** Starts the installed service on a free port; resolves to its address. */
async function serve(command: string, cwd: string): Promise<string> {
  const child = spawn(command, ['serve', '--port', '0'], { cwd, stdio: ['ignore', 'ignore', 'pipe'] })
  onTestFinished(async () => {
    child.kill('SIGKILL')
    await once(child, 'close')
  })
  let text = ''
  // Standard error is closed behind the address: a service goes on when nobody reads it.
  for await (const chunk of child.stderr) {
    text += String(chunk)
    const [, base] = /^draughtbook: (http:\S+)$/m.exec(text) ?? []
    if (base) return base
  }
  throw new Error(`the packed service ended: ${text}`)
}

describe('the packed service', () => {
  it('installs from its tarball alone, and evaluates, writes workbooks and shows the pane', async () => {
    const here = await folder()
    const tarball = (await runTool('node', ['service/pack.mjs', here], 'nodejs')).trim()
    expect(await readdir(here)).toEqual([tarball.split('/').at(-1)])
    const install = ['install', '--prefer-offline', '--no-audit', '--no-fund', '--prefix', here, tarball]
    await run('npm', install, { cwd: here, timeout: 240_000 })
    const command = join(here, 'node_modules', '.bin', 'draughtbook')
    const record = join(here, 'house.json')
    await writeFile(record, JSON.stringify(demoRecord()))
    const { stdout } = await run(command, ['evaluate', record, '--pdf', join(here, 'house.pdf')], {
      cwd: here,
    })
    expect(stdout).toMatch(/n50/i)
    expect((await readFile(join(here, 'house.pdf'))).subarray(0, 5).toString()).toBe('%PDF-')
    // Threads, and the first calculation version, are files of their own.
    const issued = join(here, 'issued.xlsx')
    await cp('test/archive/golden-1.0.0/both directions.xlsx', issued)
    expect((await run(command, ['rerun', issued], { cwd: here })).stdout).toContain(
      'agrees with version 1.0.0',
    )

    const base = await serve(command, here)
    expect(await (await fetch(base)).text()).toMatch(/<title>[^<]*Draughtbook/)
    const answer = await postJson(`${base}/v1/workbooks`, JSON.stringify(demoRecord()))
    expect(answer.status).toBe(200)
    expect(
      Buffer.from(await answer.arrayBuffer())
        .subarray(0, 2)
        .toString(),
    ).toBe('PK')

    const { dependencies } = JSON.parse(
      await readFile(join(here, 'node_modules/draughtbook-service/package.json'), 'utf8'),
    )
    expect(Object.keys(dependencies)).not.toContain('@draughtbook/shared-calc')
  }, 600_000)
})

it('a clone that is not built says what to do', async () => {
  const bin = join(await folder(), 'service', 'bin')
  await cp('service/bin', bin, { recursive: true })
  const child = spawn(process.execPath, [join(bin, 'draughtbook.mjs'), 'serve'], { stdio: 'pipe' })
  let text = ''
  child.stderr.on('data', (chunk: Buffer) => {
    text += chunk.toString()
  })
  expect(await once(child, 'close')).toEqual([2, null])
  expect(text).toBe('draughtbook: not built yet; run "npm run build" first\n')
})
