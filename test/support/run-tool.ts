import { execFile } from 'node:child_process'

/**
 * Memory of programs in pages of 2 MB, where the system gives them to those that ask for them: LibreOffice touches over a gigabyte to
 * convert one summary, and fetching it in pages of 4 kB takes two thirds of its processor time on a virtual machine.
 */
export const LARGE_PAGES = { GLIBC_TUNABLES: 'glibc.malloc.hugetlb=1' }

/**
 * Runs a program and resolves with its standard output. A program that is not there rejects with what to
 * install, so that a test fails by name instead of being skipped; so does one that fails or takes too long.
 */
export function runTool(program: string, args: readonly string[], aptPackage: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const options = {
      timeout: 240_000,
      killSignal: 'SIGKILL',
      env: { ...process.env, ...LARGE_PAGES },
    } as const
    execFile(program, [...args], options, (error, stdout, stderr) => {
      if (!error) return resolve(stdout)
      if (error.code === 'ENOENT') return reject(new Error(missing(program, aptPackage)))
      reject(new Error(`${program} failed: ${error.message}\n${stdout}${stderr}`))
    })
  })
}

function missing(program: string, aptPackage: string): string {
  return `${program} is not installed; run "bash test/tools/install-tools.sh" (or: apt-get install ${aptPackage})`
}
