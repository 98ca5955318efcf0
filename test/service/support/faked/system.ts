import { execFile } from 'node:child_process'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Ended, Machine } from '../../../../service/src/excel/machine'
import { folder } from '../command-line'

export interface FakedSystem {
  /** Home folder of the user. */
  readonly home: string
  /** For a command line that is to believe it is there. */
  readonly env: Readonly<Record<string, string>>
  /** The same for code in this process. */
  readonly machine: Machine
  /** What the system's programs were made to change. */
  state(): Promise<{ trusted: string[]; registry: Record<string, string>; opened: number }>
  /** From now on the system keeps what it was made to trust, or no longer. */
  refuse(whether: boolean): Promise<void>
  /** Every call of them, one a line. */
  calls(): Promise<string>
}

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url))
const PROGRAMS = ['certutil.exe', 'reg.exe', 'cmd.exe', 'security', 'open', 'sudo']

/** A home folder and the programs of another system, for a command line that is started with its environment. */
export async function fakedSystem(platform: 'win32' | 'darwin'): Promise<FakedSystem> {
  const root = await folder()
  const [home, programs, path] = [join(root, 'home'), join(root, 'System32'), join(root, 'state.json')]
  await mkdir(home)
  await mkdir(programs)
  const script = (name: string) =>
    `#!/bin/sh\nexec "${process.execPath}" "${here('command.mjs')}" ${name} "$@"\n`
  await Promise.all(PROGRAMS.map((name) => writeFile(join(programs, name), script(name), { mode: 0o755 })))
  const env = {
    HOME: home,
    LOCALAPPDATA: join(home, 'AppData', 'Local'),
    SystemRoot: root,
    PATH: `${programs}${delimiter}${process.env.PATH}`,
    FAKED_PLATFORM: platform,
    FAKED_STATE: path,
  }
  return {
    home,
    env: { ...env, NODE_OPTIONS: `--import ${here('platform.mjs')}` },
    machine: { platform, home, env, run: (program, args) => ended(program, args, env) },
    state: async () => JSON.parse(await readFile(path, 'utf8')),
    refuse: async (refuses) =>
      writeFile(path, JSON.stringify({ ...JSON.parse(await readFile(path, 'utf8')), refuses })),
    calls: () => readFile(`${path}.calls`, 'utf8').catch(() => ''),
  }
}

const ended = (program: string, args: readonly string[], env: NodeJS.ProcessEnv) =>
  new Promise<Ended>((resolve) => {
    execFile(program, [...args], { env }, (error, out, err) =>
      resolve({ code: error === null ? 0 : Number(error.code), text: `${out}${err}` }),
    )
  })
