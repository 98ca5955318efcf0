const NAME = 'draughtbook.tests'

/** What happened to a kept test in another tab of this browser. */
export interface Told {
  id: string
  what: 'changed' | 'removed'
}

/** Tells the browser's other tabs of what is kept and removed here. Where the browser has no such channel, nobody is told. */
export class OtherTabs {
  readonly #channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(NAME) : undefined

  tell(told: Told): void {
    this.#channel?.postMessage(told)
  }

  listen(listener: (told: Told) => void): void {
    this.#channel?.addEventListener('message', ({ data }: MessageEvent<Told>) => listener(data))
  }
}
