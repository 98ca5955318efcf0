import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { onTestFinished } from 'vitest'
import { BIN, requireBuild } from './built'

export interface Spawned {
  readonly base: string
  readonly child: ChildProcess
  /** What it wrote so far. */
  readonly text: () => string
  /** Resolves once it has written this. */
  readonly says: (what: RegExp) => Promise<void>
  readonly ended: Promise<number | null>
}

export interface SpawnOptions {
  /** Command that runs the service, `serve` unless another is named. */
  readonly command?: string
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
export async function runCommand(
  args: readonly string[],
  first?: string,
  env?: Readonly<Record<string, string>>,
) {
  await requireBuild()
  const child = spawnCommand(args, first, env)
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

/** Starts the service on a free port. It is ended with the test. */
export async function spawnService({
  command = 'serve',
  args = [],
  first,
  env,
}: SpawnOptions = {}): Promise<Spawned> {
  await requireBuild()
  const child = spawnCommand([command, '--port', '0', ...args], first, env)
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
  const says = (what: RegExp) =>
    new Promise<void>((resolve, reject) => {
      const look = () => what.test(text) && resolve()
      child.stdout?.on('data', look)
      child.stderr?.on('data', look)
      void ended.then((code) => reject(new Error(`ended with ${code} before it said ${what}: ${text}`)))
      look()
    })
  return { base, child, text: () => text, says, ended }
}
