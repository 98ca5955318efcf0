// Reads files one after the other with the built reader and prints how each ended, what it took and how much memory the
// process held at most meanwhile. Run with --expose-gc: what an earlier file left behind counts for the next.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const [, , reader, folder] = process.argv
const { readLog } = await import(reader)

for (const index of readdirSync(folder).sort()) {
  const [name] = readdirSync(join(folder, index))
  globalThis.gc()
  // 5 resets the high-water mark (proc(5), clear_refs).
  writeFileSync('/proc/self/clear_refs', '5')
  const bytes = new Uint8Array(readFileSync(join(folder, index, name)))
  const before = process.cpuUsage()
  let problems
  try {
    ;({ problems } = readLog(bytes, name, { acceptProposal: true }))
  } catch (error) {
    problems = error.problems ?? [{ code: 'thrown', message: String(error) }]
  }
  const { user, system } = process.cpuUsage(before)
  const highest = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
  console.log(JSON.stringify({ problems, seconds: (user + system) / 1e6, megabytes: Number(highest) / 1024 }))
}
