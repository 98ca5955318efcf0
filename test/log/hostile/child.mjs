// Reads files one after the other with the built reader and prints how each ended, what it took and how much memory the
// process held at most meanwhile. Run with --expose-gc: what an earlier file left behind counts for the next.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const [, , reader, folder] = process.argv
const { readLog } = await import(reader)

const secondsOf = ({ user, system }) => (user + system) / 1e6

/** Processor time of a fixed piece of work of the same kind, texts into objects: how fast this machine is just now. */
function yardstick() {
  const before = process.cpuUsage()
  for (let round = 0; round < 8; round++) JSON.parse(YARD)
  return secondsOf(process.cpuUsage(before))
}
const YARD = JSON.stringify(Array.from({ length: 50_000 }, (_, i) => ({ r: `A${i}`, v: i / 7, s: [i] })))
yardstick()
const LONG_s = 1

for (const index of readdirSync(folder).sort()) {
  const [name] = readdirSync(join(folder, index))
  const bytes = new Uint8Array(readFileSync(join(folder, index, name)))
  globalThis.gc()
  // 5 resets the high-water mark (proc(5), clear_refs).
  writeFileSync('/proc/self/clear_refs', '5')
  const before = process.cpuUsage()
  let problems
  try {
    ;({ problems } = readLog(bytes, name, { acceptProposal: true }))
  } catch (error) {
    problems = error.problems ?? [{ code: 'thrown', message: String(error) }]
  }
  const seconds = secondsOf(process.cpuUsage(before))
  const highest = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
  // Only where it took long: the two together would take longer than all the files do.
  const yard = seconds > LONG_s ? yardstick() : 0
  console.log(JSON.stringify({ problems, seconds, yard, megabytes: Number(highest) / 1024 }))
}
