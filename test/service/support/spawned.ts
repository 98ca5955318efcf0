import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { onTestFinished } from 'vitest'
import { BIN, requireBuild } from './built'

export interface Spawned {
  readonly base: string
  readonly child: ChildProcess
  /** What it wrote so far. */
  readonly text: () => string
  readonly ended: Promise<number | null>
}

export interface SpawnOptions {
  readonly args?: readonly string[]
  /**
   * Shell command that runs first, in a mount namespace of its own (util-linux: unshare), so that a test can have a
   * small or read-only disk without being root.
   */
  readonly first?: string
  /** Environment variables that differ. */
  readonly env?: Readonly<Record<string, string>>
}

/** Runs the built command line as a process of its own. */
export function spawnCommand(
  args: readonly string[],
  first?: string,
  changed: Readonly<Record<string, string>> = {},
): ChildProcess {
  const command = [process.execPath, BIN, ...args]
  const options = {
    stdio: ['pipe', 'pipe', 'pipe'] as ('pipe' | 'inherit')[],
    env: { ...process.env, ...changed },
  }
  if (first === undefined) return spawn(command[0] ?? '', command.slice(1), options)
  return spawn('unshare', ['-rm', 'sh', '-c', `${first} && exec "$@"`, 'sh', ...command], options)
}

/** The same to its end, with what it wrote. */
export async function runCommand(args: readonly string[], first?: string) {
  await requireBuild()
  const child = spawnCommand(args, first)
  let [out, err] = ['', '']
  child.stdout?.on('data', (chunk) => {
    out += chunk
  })
  child.stderr?.on('data', (chunk) => {
    err += chunk
  })
  const [code] = (await once(child, 'close')) as [number | null]
  return { code, out, err }
}

/** Starts `draughtbook serve` on a free port. It is ended with the test. */
export async function spawnService({ args = [], first, env }: SpawnOptions = {}): Promise<Spawned> {
  await requireBuild()
  const child = spawnCommand(['serve', '--port', '0', ...args], first, env)
  onTestFinished(() => void child.kill('SIGKILL'))
  let text = ''
  const ended = once(child, 'exit').then(([code]) => code as number | null)
  const base = await new Promise<string>((resolve, reject) => {
    const add = (chunk: Buffer) => {
      text += chunk.toString()
      const [, url] = /^draughtbook: (https?:\S+)$/m.exec(text) ?? []
      if (url) resolve(url)
    }
    child.stdout?.on('data', add)
    child.stderr?.on('data', add)
    void ended.then((code) => reject(new Error(`the service ended with ${code}: ${text}`)))
  })
  return { base, child, text: () => text, ended }
}
