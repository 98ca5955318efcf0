import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFile, rm } from 'node:fs/promises'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'
import {
  makeRegister,
  readLines,
  type TestLine,
  writeRegisterWorkbook,
} from '@draughtbook/shared-calc/register'
import { strFromU8, unzipSync } from 'fflate'
import { SaxesParser } from 'saxes'
import { makeArchive } from './register-archive.js'
import { compare } from './report.js'

const FILES = 100

/** The register: of one workbook against a bare read of its parts, two workers against one, and cost against count. */
export async function run(): Promise<void> {
  const { folder, paths } = await makeArchive(FILES)
  try {
    await perWorkbook(paths)
    await twoWorkers(paths)
    await costAgainstCount(paths)
    await memory(folder)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function perWorkbook(paths: readonly string[]): Promise<void> {
  const files = await Promise.all(paths.slice(0, 20).map((path) => readFile(path)))
  let at = 0
  const next = (): Uint8Array => files[at++ % files.length] as Uint8Array
  await compare(
    'One summary workbook into the register: against a bare unzip (fflate) and SAX (saxes) of the parts it needs',
    {
      name: 'bare unzip and SAX of workbook, relations, texts, formats, Record and Check',
      run: () => bareRead(next()),
    },
    [{ name: 'readLines: guard, read, check schema and digests', run: () => readLines(next(), 'a.xlsx') }],
    2.5,
  )
}

/** Parts of sheets Check and Record; they are numbered in the order of the sheets. */
function checkAndRecord(bytes: Uint8Array): string[] {
  const parts = unzipSync(bytes, { filter: ({ name }) => name === 'xl/workbook.xml' })
  const names = [
    ...strFromU8(parts['xl/workbook.xml'] ?? new Uint8Array()).matchAll(/<sheet [^>]*name="(\w+)"/g),
  ]
  return ['Check', 'Record'].map((name) => {
    const at = names.findIndex(([, one]) => one === name)
    if (at < 0) throw new RangeError(`no sheet ${name} in the summary`)
    return `xl/worksheets/sheet${at + 1}.xml`
  })
}

/** Parts the register needs. */
function bareRead(bytes: Uint8Array): number {
  const needed = new Set([
    '_rels/.rels',
    'xl/workbook.xml',
    'xl/_rels/workbook.xml.rels',
    'xl/sharedStrings.xml',
    'xl/styles.xml',
    ...checkAndRecord(bytes),
  ])
  const parts = unzipSync(bytes, {
    filter: ({ name }) => needed.has(name),
  })
  let texts = 0
  for (const part of Object.values(parts)) {
    const parser = new SaxesParser()
    parser.on('opentag', () => undefined)
    parser.on('text', (text) => {
      texts += text.length
    })
    parser.write(strFromU8(part)).close()
  }
  return texts
}

interface Threads {
  run(task: string, order: object, signal: AbortSignal): Promise<unknown>
  close(): Promise<void>
}

async function twoWorkers(paths: readonly string[]): Promise<void> {
  const load = (name: string) => import(pathToFileURL(resolve(`service/dist/archive/${name}.js`)).href)
  const { startThreads } = (await load('thread-runner')) as { startThreads: (options: object) => Threads }
  const { runArchive } = (await load('run-archive')) as {
    runArchive: (threads: Threads, task: string, orders: object[]) => Promise<unknown[]>
  }
  const orders = paths.map((path) => ({ path, file: path, layouts: [], keys: [] }))
  const pools = [startThreads({ workers: 1 }), startThreads({ workers: 2 })] as const
  console.log(
    `\nTwo worker threads against one, ${orders.length} workbooks (goal ≥ 1.8 times; median of five rounds)`,
  )
  for (const task of ['register', 'rerun']) {
    for (const pool of pools) await runArchive(pool, task, orders.slice(0, 20))
    const rounds: [number[], number[]] = [[], []]
    for (let round = 0; round < 5; round += 1)
      for (const [i, pool] of pools.entries()) {
        const start = performance.now()
        await runArchive(pool, task, orders)
        rounds[i as 0 | 1].push(performance.now() - start)
      }
    const [one, two] = rounds.map(median) as [number, number]
    console.log(
      `  ${(one / two).toFixed(2)} times  ${task}: ${one.toFixed(0)} ms with one, ${two.toFixed(0)} ms with two`,
    )
  }
  for (const pool of pools) await pool.close()
  console.log(
    `  ${(await ceiling()).toFixed(2)} times  peer: a loop of square roots, which no memory or collector slows down`,
  )
}

/** What this machine gives two threads over one where they have nothing to share. */
async function ceiling(): Promise<number> {
  const burn = (): Promise<number> =>
    new Promise((done) => {
      const loop =
        'let x = 0; for (let i = 0; i < 3e8; i++) x += Math.sqrt(i); require("worker_threads").parentPort.postMessage(x)'
      new Worker(loop, { eval: true }).once('message', done)
    })
  const timed = async (threads: number): Promise<number> => {
    const start = performance.now()
    await Promise.all(Array.from({ length: threads }, burn))
    return performance.now() - start
  }
  const rounds: number[] = []
  for (let round = 0; round < 5; round += 1) rounds.push((2 * (await timed(1))) / (await timed(2)))
  return median(rounds)
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0

/** From files to the register's bytes; the same hundred files again and again, each time under another name and number. */
async function costAgainstCount(paths: readonly string[]): Promise<void> {
  const files = await Promise.all(paths.map((path) => readFile(path)))
  const counts = [100, 200, 500, 1000, 2000]
  const points: [number, number][] = []
  // Once before: the first hundred would otherwise pay for compiling.
  await registerOf(files, 200)
  console.log('\nCost of a register against the number of its workbooks (reading, arranging, writing)')
  for (const count of counts) {
    globalThis.gc?.()
    const { reading_ms, all_ms } = await registerOf(files, count)
    points.push([Math.log(count), Math.log(all_ms)])
    console.log(
      `  ${String(count).padStart(5)} workbooks  ${all_ms.toFixed(0).padStart(7)} ms  (reading ${reading_ms.toFixed(0)} ms), ${(all_ms / count).toFixed(2)} ms each`,
    )
  }
  console.log(`  exponent ${slope(points).toFixed(2)} (1 is linear)`)
}

async function registerOf(
  files: readonly Uint8Array[],
  count: number,
): Promise<{ reading_ms: number; all_ms: number }> {
  const start = performance.now()
  const lines: TestLine[] = []
  for (let i = 0; i < count; i += 1)
    for (const line of readLines(files[i % files.length] as Uint8Array, `${i}.xlsx`).lines)
      lines.push({ ...line, building: `Plot ${i}`, testNumber: `${i}`, recordDigest: `${i}` })
  const read = performance.now()
  await writeRegisterWorkbook(makeRegister(lines, [], { asOf: '2026-10-31' }))
  return { reading_ms: read - start, all_ms: performance.now() - start }
}

function slope(points: readonly [number, number][]): number {
  const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length
  const [mx, my] = [mean(0), mean(1)]
  const sxy = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0)
  return sxy / points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0)
}

/** Peak memory of the command line over the archive, given once and ten times. */
async function memory(folder: string): Promise<void> {
  console.log(`\nPeak memory of the command line, two workers: ${FILES} workbooks, and ten times as many`)
  const hook = `data:text/javascript,process.on('exit',()=>process.stderr.write('peak '+process.resourceUsage().maxRSS+'\\n'))`
  for (const command of ['register', 'rerun']) {
    const { copies, remove } = await tenTimes(folder)
    for (const [count, paths] of [
      [FILES, [folder]],
      [FILES * 10, [folder, ...copies]],
    ] as const) {
      const child = spawn(process.execPath, [
        '--import',
        hook,
        'service/bin/draughtbook.mjs',
        command,
        ...paths,
        '--workers',
        '2',
        '--json',
      ])
      let said = ''
      child.stdout.resume()
      child.stderr.on('data', (text: Buffer) => {
        said += text.toString()
      })
      await once(child, 'close')
      const peak = Number(/peak (\d+)/.exec(said)?.[1] ?? Number.NaN) / 1024
      console.log(`  ${command.padEnd(8)} ${String(count).padStart(5)} workbooks: ${peak.toFixed(0)} MB`)
    }
    await remove()
  }
}

/** Nine copies of a folder beside it. */
async function tenTimes(folder: string): Promise<{ copies: string[]; remove: () => Promise<void> }> {
  const { cp } = await import('node:fs/promises')
  const copies = Array.from({ length: 9 }, (_, i) => `${folder}-copy-${i + 1}`)
  for (const copy of copies) await cp(folder, copy, { recursive: true })
  return {
    copies,
    remove: async () => {
      for (const copy of copies) await rm(copy, { recursive: true, force: true })
    },
  }
}
