import { PageHost } from './host/page/page-host.js'
import { KeptTests } from './kept/kept-tests.js'
import { OpenTest, type Remembered } from './kept/open-test.js'
import { OtherTabs } from './kept/other-tabs.js'
import { takeOver } from './kept/take-over.js'
import { watchForMissingParts } from './pane/missing-part.js'
import { emptyEntries, parseEntries } from './pane/one-test/entries.js'
import { TestStore } from './pane/one-test/store.js'
import { PageTests } from './pane/page/page-tests.js'

/** The pane over the plain page, with the test that was on show last. Everything entered is kept in this browser. */
export async function startPage(base: URL): Promise<{ store: TestStore; tests: PageTests }> {
  const tabs = new OtherTabs()
  const test = new OpenTest(openKept, JSON.stringify(emptyEntries()), storages(), tabs)
  const host = new PageHost(test)
  const store = new TestStore(host, base, { keep_ms: 0, settle_ms: 350, retry_ms: 15_000 })
  const tests = new PageTests(host, store, tabs)
  watchForMissingParts((words) => store.tell(words))
  // Before anything is drawn: the forms are drawn once, with what was kept.
  await tests.begin()
  window.addEventListener('pagehide', () => void store.save())
  window.addEventListener('focus', () => void tests.takeUpChanges())
  tabs.listen((told) => void tests.hear(told, !document.hidden))
  return { store, tests }
}

/** The browser's database; undefined where it is switched off: the page still has to work. */
async function openKept(): Promise<KeptTests | undefined> {
  try {
    const kept = await KeptTests.open()
    const [old] = storages().slice(1)
    if (old) await takeOver(kept, old, nameIn)
    return kept
  } catch (error) {
    console.warn('Tests are not kept:', error)
    return undefined
  }
}

function nameIn(text: string): string | undefined {
  const entries = parseEntries(text)
  const name = entries?.fields['building.name']
  return entries && (name && 'text' in name ? name.text : '')
}

/** That of the tab, then that of the browser; reading either throws where it is switched off. */
function storages(): (Storage & Remembered)[] {
  try {
    return [window.sessionStorage, window.localStorage]
  } catch {
    return []
  }
}
