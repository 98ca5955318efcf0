import { createServer, type Server } from 'node:http'
import type { AddressInfo, Socket } from 'node:net'
import express from 'express'
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core'
import { onTestFinished, TestRunner } from 'vitest'
import { createApp } from '../../../service/src/app.js'
import { defaultSettings } from '../../../service/src/settings/settings.js'
import { chromiumPath } from '../../support/chromium.js'
import { buildPane, copyOf } from './built-pane.js'

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // Code is translated for speed only where it runs very often, as a simulation does: a page lives for seconds here, and translating
  // what axe-core and the pane run a few hundred times takes longer than it saves.
  '--js-flags=--invocation-count-for-maglev=20000 --invocation-count-for-turbofan=100000',
  // No page here has a frame of another site.
  '--disable-site-isolation-trials',
  // Pages of one context share a process, whatever their port: see `shared`.
  '--process-per-site',
  `--disable-features=${[
    // The address bar of a window that nobody sees: two pages of the browser's own in a process of their own, which take more
    // processor time than opening an empty page does.
    ...['WebUIOmniboxPopup', 'WebUIOmniboxFullPopup', 'WebUIOmniboxAimPopup'],
    // What playwright switches off itself: the list given last is the one that counts.
    ...[
      'AvoidUnnecessaryBeforeUnloadCheckSync',
      'DestroyProfileOnBrowserClose',
      'HttpsUpgrades',
      'LensOverlay',
    ],
    ...['HttpsFirstBalancedModeAutoEnable', 'MediaRouter', 'PaintHolding', 'ThirdPartyStoragePartitioning'],
    ...[
      'AvoidCorsURLLoaderRestartOnRedirect',
      'OptimizationHints',
      'NetworkTimeServiceQuerying',
      'AimEnabled',
    ],
    ...['PreconnectToSearch'],
    // A script that is read while it arrives is compiled anew for every page, though the process holds it compiled already.
    ...['ScriptStreaming'],
  ].join()}`,
]

const WINDOW = { width: 1200, height: 860 }

/** One for all files that run in this process: it ends with it. */
let running: Promise<Browser> | undefined

async function browser(): Promise<Browser> {
  if (!(await running?.catch(() => undefined))?.isConnected())
    running = chromium.launch({ executablePath: chromiumPath(), args: FLAGS })
  return running as Promise<Browser>
}

/** A context with a page that is left idle. */
interface Shared {
  context: BrowserContext
  idle: Page
}

/**
 * Contexts for the pages of most tests, one of each kind and one page at a time: what it kept is cleared when the test ends, and before
 * the test opens another, where it has closed the one before. An idle page keeps its process alive, so that the next page finds code
 * compiled and memory in place. That is a third of the processor time of a short test.
 */
const shared = new Map<string, Promise<Shared>>()
/** The pages of the test that runs, by kind; undefined while one is being opened. */
const inUse = new Map<string, Page | undefined>()

async function openShared(base: string, options: BrowserContextOptions): Promise<Shared> {
  const context = await (await browser()).newContext({ acceptDownloads: true, ...options })
  await asKept(context)
  const idle = await context.newPage()
  await idle.goto(new URL('healthz', base).href)
  return { context, idle }
}

async function clear({ context, idle }: Shared, origin: string): Promise<void> {
  await Promise.all(context.pages().map((page) => page !== idle && page.close()))
  const session = await context.newCDPSession(idle)
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' })
  await session.detach()
}

const withoutWorkers = (context: BrowserContext) =>
  context.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'serviceWorker'))

/** The service worker of an earlier visit, as far as a page looks at it. Its files come from the service nevertheless. */
const asKept = (context: BrowserContext) =>
  context.addInitScript(() => {
    const never = new Promise(() => undefined)
    const value = { controller: {}, ready: never, register: () => never }
    Object.defineProperty(Navigator.prototype, 'serviceWorker', { value, configurable: true })
  })

/**
 * What a test asks of its browser. By itself a page takes it that all its files were kept at an earlier visit. `keepsPage`: it keeps
 * them now, some 250 files; or, where it is false, the browser is of the kind that cannot, as where a page does not come by https: then the
 * page fetches ahead what it needs to work alone.
 */
type Asked = BrowserContextOptions & { keepsPage?: boolean }

/** A page with everything it complained of and every address it asked for. */
export interface Watched {
  page: Page
  complaints: string[]
  asked: string[]
}

/** The service with the built pane, on loopback, and a browser before it. */
export class World {
  #server: Server | undefined
  #app = express()
  #port = 0
  #stopped = false
  readonly #sockets = new Set<Socket>()
  /** Opened for all tests of a file. */
  readonly #contexts: BrowserContext[] = []
  /** Waited before every answer of the API, ms. */
  delay_ms = 0

  private constructor(
    private readonly built: Awaited<ReturnType<typeof buildPane>>,
    private readonly browser: Browser,
  ) {}

  /** @param how `changes`: the tests change the pane's files, and have a copy of their own. */
  static async start({ changes = false } = {}): Promise<World> {
    const built = changes ? await copyOf(await buildPane()) : await buildPane()
    const world = new World(built, await browser())
    await world.#listen()
    return world
  }

  /** Where the pane's files are; only read, unless they are a copy. */
  get folder(): string {
    return this.built.folder
  }

  get base(): string {
    return `http://127.0.0.1:${this.#port}/`
  }

  /** Looks into the pane's folder as a service does when it starts. */
  servePane(): void {
    const app = express()
    app.use('/v1', (_request, _response, next) => void setTimeout(next, this.delay_ms))
    app.use(createApp({ settings: { ...defaultSettings, pane: this.folder } }))
    this.#app = app
  }

  async #listen(): Promise<void> {
    this.servePane()
    const server = createServer((request, response) => this.#app(request, response))
    server.on('connection', (socket) => {
      if (this.#stopped) return void socket.destroy()
      this.#sockets.add(socket)
      socket.on('close', () => this.#sockets.delete(socket))
    })
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject)
      server.listen(0, '127.0.0.1', resolve)
    })
    this.#port = (server.address() as AddressInfo).port
    this.#server = server
  }

  /** Lets the stopped service answer again. */
  startService(): void {
    this.#stopped = false
  }

  /** Ends every connection, and each new one at once. The port is kept: another process could take it meanwhile. */
  stopService(): void {
    this.#stopped = true
    for (const socket of this.#sockets) socket.destroy()
  }

  /** A browser of its own. It is closed with the test that opened it: pages left open slow all that come after them. */
  async context({ keepsPage, ...options }: Asked = {}): Promise<BrowserContext> {
    const context = await this.browser.newContext(options)
    if (keepsPage === undefined) await asKept(context)
    else if (!keepsPage) await withoutWorkers(context)
    if (TestRunner.getCurrentTest()) onTestFinished(() => context.close())
    else this.#contexts.push(context)
    return context
  }

  /** A page for a test that asks for no more than a window and touch: in a shared context, where that is free. */
  async #sharedPage({ viewport, hasTouch, isMobile, ...more }: Asked): Promise<Page | undefined> {
    if (Object.keys(more).length > 0 || !TestRunner.getCurrentTest()) return undefined
    const kind = { hasTouch: hasTouch ?? false, isMobile: isMobile ?? false }
    const key = JSON.stringify(kind)
    const { origin } = new URL(this.base)
    const clearUsed = async (): Promise<void> => {
      const used = await shared.get(key)
      if (used) await clear(used, origin)
    }
    const isAgain = inUse.has(key)
    if (isAgain && !inUse.get(key)?.isClosed()) return undefined
    inUse.set(key, undefined)
    if (!isAgain) onTestFinished(() => clearUsed().finally(() => inUse.delete(key)))
    else if ((await shared.get(key))?.context.pages().length !== 1) return undefined
    else await clearUsed()
    if (!this.browser.isConnected()) shared.clear()
    const open = await shared.get(key)
    if (!open || open.idle.isClosed()) shared.set(key, openShared(this.base, kind))
    const page = await (await (shared.get(key) as Promise<Shared>)).context.newPage()
    await page.setViewportSize(viewport ?? WINDOW)
    inUse.set(key, page)
    return page
  }

  /** A page with nothing in it yet. */
  async page(options: Asked = {}): Promise<Page> {
    const page = (await this.#sharedPage(options)) ?? (await this.#ownPage(options))
    page.setDefaultTimeout(120_000)
    return page
  }

  async open(path = '', options: Asked = {}): Promise<Watched> {
    const page = await this.page(options)
    const watched: Watched = { page, complaints: [], asked: [] }
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') watched.complaints.push(message.text())
    })
    page.on('pageerror', (error) => watched.complaints.push(String(error)))
    page.on('request', (request) => watched.asked.push(request.url()))
    await page.goto(new URL(path, this.base).href)
    await page.locator('.starting').waitFor({ state: 'detached' })
    await page.locator('[aria-busy]').first().waitFor({ state: 'detached' })
    return watched
  }

  async #ownPage(options: Asked): Promise<Page> {
    const usual = { viewport: WINDOW, acceptDownloads: true }
    return (await this.context({ ...usual, ...options })).newPage()
  }

  async stop(): Promise<void> {
    await Promise.all(this.#contexts.map((context) => context.close()))
    this.stopService()
    await new Promise((resolve) => this.#server?.close(resolve))
    await this.built.remove()
  }
}
