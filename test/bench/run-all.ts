import { readdirSync } from 'node:fs'
import { machineLine } from './report.js'

// Every *.bench.js beside this file, or those whose name holds an argument: `npm run bench -- evaluate`.
const wanted = process.argv.slice(2)
const benches = readdirSync(import.meta.dirname).filter(
  (file) => file.endsWith('.bench.js') && (wanted.length === 0 || wanted.some((word) => file.includes(word))),
)
console.log(machineLine())
for (const file of benches) {
  const { run } = (await import(`./${file}`)) as { run: () => Promise<unknown> }
  await run()
}
