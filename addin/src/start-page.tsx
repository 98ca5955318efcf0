import { PageHost } from './host/page/page-host.js'
import { TestStore } from './pane/one-test/store.js'

/** The pane over the plain page. What is typed is kept in this browser, by the workbook's file name. */
export function startPage(base: URL): { store: TestStore; host: PageHost } {
  const host = new PageHost(browserStorage())
  const store = new TestStore(host, base, { keep_ms: 0, settle_ms: 350, retry_ms: 15_000 })
  void store.start()
  window.addEventListener('pagehide', () => void store.save())
  return { store, host }
}

/** Storage can be switched off; reading it then throws, and the page still has to work. */
function browserStorage(): Pick<Storage, 'getItem' | 'setItem'> {
  try {
    return window.localStorage
  } catch {
    return {
      getItem: () => null,
      setItem: () => {
        throw new Error('storage is switched off')
      },
    }
  }
}
