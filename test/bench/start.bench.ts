import { spawn, spawnSync } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const BIN = 'service/bin/draughtbook.mjs'
const LOG = 'test/demo/demo-log.xlsx'
const ROUNDS = 9

interface Start {
  readonly ms: number
  readonly peak_MB: number
}

/** Whole processes, from spawn to end, against bare node in the same run; the smallest of several is the least disturbed. */
export async function run(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'start-'))
  try {
    const out = join(folder, 'summary.xlsx')
    const peer = await best(() => whole(['-e', '0']))
    console.log('\nFrom the command to its end, against bare node')
    show('bare node', peer, peer)
    show('draughtbook --help', await best(() => whole([BIN, '--help'])), peer, 2.5)
    show('evaluate LOG --json', await best(() => whole([BIN, 'evaluate', LOG, '--json'])), peer, 5)
    show(
      'evaluate LOG, with its workbook',
      await best(() => whole([BIN, 'evaluate', LOG, '--out', out])),
      peer,
      9,
    )
    show('serve until /healthz answers', await best(untilHealthy), peer, 8)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

function show(name: string, { ms, peak_MB }: Start, peer: Start, goal?: number): void {
  const ratio = ms / peer.ms
  const aim = goal === undefined ? '' : ` (goal ≤ ${goal} ×, ${ratio <= goal ? 'reached' : 'not reached'})`
  console.log(
    `  ${`${ratio.toPrecision(3)} ×`.padStart(8)}  ${ms.toFixed(0).padStart(6)} ms  ${peak_MB.toFixed(0).padStart(4)} MB  ${name}${aim}`,
  )
}

async function best(start: () => Promise<Start>): Promise<Start> {
  const starts: Start[] = []
  for (let i = 0; i < ROUNDS; i += 1) starts.push(await start())
  return starts.reduce((least, next) => (next.ms < least.ms ? next : least))
}

/** Node says as it ends how much memory it held at most. */
const PEAK =
  'data:text/javascript,process.on("exit",()=>process.stderr.write("peak "+process.resourceUsage().maxRSS+"\\n"))'

async function whole(args: readonly string[]): Promise<Start> {
  const began = performance.now()
  const { status, stderr } = spawnSync(process.execPath, ['--import', PEAK, ...args], { encoding: 'utf8' })
  const ms = performance.now() - began
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`)
  return { ms, peak_MB: Number(/peak (\d+)/.exec(stderr)?.[1] ?? Number.NaN) / 1024 }
}

async function untilHealthy(): Promise<Start> {
  const port = await freePort()
  const began = performance.now()
  const child = spawn(process.execPath, [BIN, 'serve', '--port', String(port)], { stdio: 'ignore' })
  try {
    for (;;) {
      const answer = await fetch(`http://127.0.0.1:${port}/healthz`).catch(() => undefined)
      if (answer?.ok) return { ms: performance.now() - began, peak_MB: await peakOf(child.pid) }
      if (performance.now() - began > 60_000) throw new Error('serve did not answer within 60 s')
      await new Promise((resolve) => setTimeout(resolve, 5))
    }
  } finally {
    child.kill('SIGKILL')
  }
}

/** Most memory a process has held so far. Source: Linux, proc_pid_status(5). */
const peakOf = async (pid = 0): Promise<number> =>
  Number(/^VmHWM:\s+(\d+) kB$/m.exec(await readFile(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })
