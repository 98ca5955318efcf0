import { execFile } from 'node:child_process'
import { homedir } from 'node:os'

/** The computer that Excel runs on, as far as setting up the add-in needs it; tests give one of their own. */
export interface Machine {
  readonly platform: NodeJS.Platform
  /** Home folder of this user. */
  readonly home: string
  readonly env: Readonly<Record<string, string | undefined>>
  /** Runs a program to its end. Never rejects: a program that cannot be started ends with 127. */
  run(program: string, args: readonly string[]): Promise<Ended>
}

export interface Ended {
  readonly code: number
  /** What it wrote, on either stream. */
  readonly text: string
}

/** Longer than anybody takes to answer the system's question. */
const LIMIT_MS = 300_000

export const thisMachine = (): Machine => ({
  platform: process.platform,
  home: homedir(),
  env: process.env,
  run: (program, args) =>
    new Promise((resolve) => {
      execFile(program, [...args], { timeout: LIMIT_MS, windowsHide: true }, (error, out, err) => {
        const code = error === null ? 0 : typeof error.code === 'number' ? error.code : 127
        resolve({ code, text: `${out}${err}`.trim() })
      })
    }),
})

/** @throws Error with what a program said when it did not succeed */
export function done({ code, text }: Ended): void {
  if (code !== 0) throw new Error(text.replace(/\s+/g, ' ').trim().slice(0, 300) || `it ended with ${code}`)
}
