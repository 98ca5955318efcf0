import { execFile } from 'node:child_process'

/**
 * Runs a program and resolves with its standard output. A program that is not there rejects with what to
 * install, so that a test fails by name instead of being skipped; so does one that fails or takes too long.
 */
export function runTool(program: string, args: readonly string[], aptPackage: string): Promise<string> {
  return new Promise((resolve, reject) => {
    execFile(program, [...args], { timeout: 120_000, killSignal: 'SIGKILL' }, (error, stdout, stderr) => {
      if (!error) return resolve(stdout)
      if (error.code === 'ENOENT') return reject(new Error(missing(program, aptPackage)))
      reject(new Error(`${program} failed: ${error.message}\n${stdout}${stderr}`))
    })
  })
}

function missing(program: string, aptPackage: string): string {
  return `${program} is not installed; run "bash test/tools/install-tools.sh" (or: apt-get install ${aptPackage})`
}
