import type { LiveResult } from '../../calc/live.js'
import type { Host } from '../../host/host.js'
import type { StepId } from '../../kept/kept-test.js'
import { drawnAndIdle } from '../when-idle.js'
import { CellsRead, type ReadCells } from './cells-read.js'
import { emptyEntries, isUntouched, parseEntries, referencesOf, type TestEntries } from './entries.js'
import { wordsOf } from './fault-words.js'
import { withoutStaleOrigin } from './library-origin.js'
import { Past } from './past.js'
import { ServiceAsked } from './service-asked.js'
import { aboutTest } from './standing.js'
import type { StoreTimes, TestState } from './test-state.js'

type Live = typeof import('../../calc/live.js').live

/** The Test view's one state. Views call its methods and listen; nothing else writes to it. */
export class TestStore {
  state: TestState = {
    entries: emptyEntries(),
    result: undefined,
    evaluation: undefined,
    origin: { kind: 'none' },
    trace: false,
    fault: undefined,
    saved: 'yes',
    opened: 0,
    step: 'before',
    canUndo: false,
    offline: undefined,
    newer: false,
    wanted: undefined,
    marking: false,
  }
  readonly #past = new Past<TestEntries>()
  readonly #listeners = new Set<() => void>()
  readonly #cells: CellsRead
  readonly #service: ServiceAsked
  #run = 0
  #saveTimer: ReturnType<typeof setTimeout> | undefined
  #calc: Promise<{ live: Live }> | undefined
  /** The calculation, once it is there. */
  #live: Live | undefined

  constructor(
    readonly host: Host,
    readonly base: URL,
    private readonly times: StoreTimes = { keep_ms: 350, settle_ms: 350, retry_ms: 15_000 },
  ) {
    this.state.marking = host.kind === 'page'
    this.#cells = new CellsRead(host, (action) => this.#host(action))
    this.#service = new ServiceAsked(
      base,
      times,
      () => this.state,
      (part) => this.#set(part),
    )
  }

  listen(listener: () => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /**
   * Follows the workbook's cells and takes up what was kept with it; in this order, so that no edit goes unseen.
   * Resolves with the entries; what follows from them is worked out afterwards.
   */
  async start(): Promise<void> {
    const before = this.state.entries
    await this.#host(() => this.#watch())
    await this.#takeUp(before)
    void this.refresh()
  }

  #watch(): Promise<() => Promise<void>> {
    return this.host.watch(({ sheet }) => {
      // How a log is understood may hang on any cell of it.
      const touched =
        this.state.entries.log !== undefined ||
        referencesOf(this.state.entries).some(
          (reference) =>
            reference.toLowerCase().includes(sheet.toLowerCase().replaceAll("'", "''")) ||
            !reference.includes('!'),
        )
      if (!touched) return
      this.#cells.forget()
      void this.refresh()
    })
  }

  /**
   * Reads the entries kept with the workbook now open.
   * @param step put on show with them; without it, the one that was on show when they were kept
   */
  async restore(step?: StepId): Promise<void> {
    await this.#takeUp(this.state.entries, step)
    await this.refresh()
  }

  /** @param before entries that may be replaced: what was typed since stands */
  async #takeUp(before: TestEntries, step?: StepId): Promise<void> {
    this.#cells.forget()
    const kept = await this.#host(() => this.host.loadSettings())
    // Typed while the spreadsheet was still answering: that stands, and is kept in its turn.
    if (this.state.entries !== before) return
    const entries = kept === undefined ? undefined : parseEntries(kept)
    if (kept !== undefined && !entries)
      this.#set({ fault: 'The entries saved in this workbook could not be read, so the forms are empty.' })
    this.#past.clear()
    this.#set({
      entries: entries ?? emptyEntries(),
      // What was worked out for another test is not shown with these.
      result: undefined,
      evaluation: undefined,
      origin: { kind: 'none' },
      opened: this.state.opened + 1,
      canUndo: false,
      wanted: undefined,
      step: step ?? this.host.step ?? 'before',
    })
  }

  /**
   * Changes entries, shows what follows at once, and keeps them.
   * @param what names the value changed: what is typed into it letter by letter is undone in one go
   */
  change(edit: (entries: TestEntries) => TestEntries, what?: string): void {
    this.#past.add(this.state.entries, what)
    this.#put(edit(this.state.entries))
  }

  /** Takes the last change back. */
  undo(): void {
    const before = this.#past.take()
    if (before) this.#put(before)
  }

  #put(entries: TestEntries): void {
    const shown = this.#atOnce(entries)
    this.#set({ entries, saved: 'saving', canUndo: this.#past.any, ...shown })
    if (shown) this.#follow()
    else void this.refresh()
    clearTimeout(this.#saveTimer)
    if (this.times.keep_ms === 0) void this.save()
    else this.#saveTimer = setTimeout(() => void this.save(), this.times.keep_ms)
  }

  setField(path: string, entry: TestEntries['fields'][string] | undefined): void {
    this.change(({ fields: before, ...rest }) => {
      const fields = withoutStaleOrigin(before, path)
      const { [path]: _, ...others } = fields
      return {
        ...rest,
        fields:
          entry === undefined || ('text' in entry && entry.text === '')
            ? others
            : { ...fields, [path]: entry },
      }
    }, path)
  }

  /** Puts a step on show. */
  show(step: StepId): void {
    this.#set({ step, wanted: undefined })
    if (this.host.kind === 'page') void this.save()
  }

  /** Puts a step on show and leads to a field in it. */
  lead(step: StepId, path: string): void {
    this.#set({ step, wanted: { path } })
  }

  /** The page opens without a network from now on; or the browser could not keep it, with the reason. */
  keptForOffline(kept: 'yes' | string): void {
    this.#set({ offline: kept })
  }

  /** A newer version of the page waits to be taken. */
  newerIsReady(): void {
    this.#set({ newer: true })
  }

  /** Points cells of findings out, or no longer. */
  mark(on: boolean): void {
    this.#set({ marking: on })
    if (!on) void this.attempt(() => this.host.mark([]))
  }

  showTrace(open: boolean): void {
    if (open === this.state.trace) return
    this.#set({ trace: open })
    void this.refresh()
  }

  /** Keeps the entries now; called also when the page is left. */
  async save(): Promise<void> {
    clearTimeout(this.#saveTimer)
    try {
      await this.host.saveSettings(JSON.stringify(this.state.entries), aboutTest(this.state))
      this.#set({ saved: 'yes' })
    } catch (error) {
      this.#set({ saved: wordsOf(error) })
    }
  }

  /** Works out everything from the entries and the cells they point to. */
  async refresh(): Promise<void> {
    const run = ++this.#run
    // Nothing typed or picked: there is nothing to fetch the calculation for.
    if (!this.state.result && isUntouched(this.state.entries)) return
    const [calc, grid] = await Promise.all([
      this.#host(() => this.#calculation()),
      this.#cells.of(this.state.entries),
    ])
    // It is asked for again with the next change.
    if (!calc) return
    this.#live = calc.live
    if (run !== this.#run) return
    this.#set(this.#workOut(calc.live, this.state.entries, grid))
    this.#follow()
    // What a list shows of the test may have changed with the result.
    if (this.host.kind === 'page') void this.save()
  }

  /** Its code is large: what was typed is drawn before it is fetched. */
  #calculation(): Promise<{ live: Live }> {
    this.#calc ??= drawnAndIdle()
      .then(() => import('../../calc/live.js'))
      .catch((error: unknown) => {
        this.#calc = undefined
        throw error
      })
    return this.#calc
  }

  /** What follows from entries where everything it takes is at hand: shown with them in one drawing. */
  #atOnce(entries: TestEntries): Partial<TestState> | undefined {
    const cells = this.#cells.known(entries)
    if (!this.#live || cells === 'unknown') return undefined
    this.#run += 1
    return this.#workOut(this.#live, entries, cells)
  }

  #workOut(live: Live, entries: TestEntries, read: ReadCells | undefined): Partial<TestState> {
    const { trace, evaluation } = this.state
    let result: LiveResult
    try {
      result = live(entries, read?.grid, trace, read?.understood)
    } catch (error) {
      // Whatever the calculation does, what was typed is kept.
      return { result: undefined, evaluation: undefined, origin: { kind: 'none' }, fault: wordsOf(error) }
    }
    const same = evaluation && result.evaluation?.recordDigest === evaluation.recordDigest && !trace
    return {
      result,
      evaluation:
        same && this.state.origin.kind === 'service' && !result.unusable ? evaluation : result.evaluation,
      origin: result.evaluation
        ? same
          ? this.state.origin
          : { kind: 'local', why: 'asking', words: 'Calculated on this device; asking the service' }
        : { kind: 'none' },
    }
  }

  /** What the result on show sets going: code for what comes next, and the service's word. */
  #follow(): void {
    const { result } = this.state
    if (!result) return
    if (result.record) void import('../../worker/warm-up.js').then(({ warmUp }) => warmUp())
    if (result.record && !result.unusable) this.#service.soon()
    else
      this.#service.stop(
        result.evaluation
          ? {
              kind: 'local',
              why: 'refused',
              words: 'Calculated on this device; not sent to the service until the entries are corrected',
            }
          : undefined,
      )
  }

  /** Says something that the user must know. */
  tell(words: string): void {
    this.#set({ fault: words })
  }

  dismissFault(): void {
    this.#set({ fault: undefined })
  }

  /** Runs something the host may refuse; the refusal is shown. */
  async attempt<T>(action: () => Promise<T>): Promise<T | undefined> {
    return this.#host(action)
  }

  /** Asks the service again: something it depends on has changed. */
  askAgain(): void {
    this.#service.soon()
  }

  async #host<T>(action: () => Promise<T>): Promise<T | undefined> {
    try {
      return await action()
    } catch (error) {
      this.#set({ fault: wordsOf(error) })
      return undefined
    }
  }

  #set(part: Partial<TestState>): void {
    this.state = { ...this.state, ...part }
    for (const listener of this.#listeners) listener()
  }
}
