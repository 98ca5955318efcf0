import { counted, dayInWords } from '@draughtbook/shared-calc'
import { useEffect, useState } from 'preact/hooks'
import { type KeptTest, sizeOf } from '../../kept/kept-test.js'
import { askToKeep, type StorageRoom, sizeText, storageRoom } from '../../kept/storage-room.js'
import { type PageTests, titleOf } from './page-tests.js'
import { RemoveAll } from './remove-all.js'

/** The tests kept in this browser, and how much room there is for more. */
export function TestsView({ tests, onOpen }: { tests: PageTests; onOpen: () => void }) {
  const [list, setList] = useState<readonly KeptTest[]>()
  const [room, setRoom] = useState<StorageRoom>({})
  const look = (): void => {
    void tests.store.attempt(async () => {
      setList(await tests.list())
      setRoom(await storageRoom())
    })
  }
  useEffect(() => {
    void tests.store.save().then(look)
    return tests.listen(look)
  }, [tests])
  const then = (act: Promise<void>): void => void act.then(onOpen)
  return (
    <section class="kept-tests" aria-labelledby="kept-tests-title">
      <div class="kept-head">
        <h2 id="kept-tests-title">Tests kept in this browser</h2>
        <button type="button" class="main-action" onClick={() => then(tests.create())}>
          New test
        </button>
      </div>
      {list?.length === 0 ? (
        <p class="hint">No tests yet. A test is kept as soon as you enter something.</p>
      ) : null}
      <ul class="kept-list">
        {list?.map((test) => (
          <Row
            key={test.id}
            test={test}
            current={test.id === tests.host.test.now.id}
            tests={tests}
            onOpen={() => then(tests.open(test.id))}
            onRetest={() => then(tests.copyAsRetest(test.id))}
          />
        ))}
      </ul>
      <Room room={room} onAsked={look} />
      <RemoveAll tests={tests} />
    </section>
  )
}

interface RowProps {
  test: KeptTest
  current: boolean
  tests: PageTests
  onOpen: () => void
  onRetest: () => void
}

function Row({ test, current, tests, onOpen, onRetest }: RowProps) {
  const [asking, setAsking] = useState(false)
  const { about, log, photos } = test
  const name = about.name || log?.name || 'No name yet'
  const title = titleOf(test)
  const parts = [
    about.date === undefined ? 'no date yet' : dayInWords(about.date),
    about.standing,
    log ? `log ${log.name}${log.size === 0 ? ' (the file is not kept)' : ''}` : '',
    photos.length === 0 ? '' : counted(photos.length, 'photo'),
    sizeText(sizeOf(test)),
  ]
  return (
    <li class="kept-test" aria-current={current ? 'true' : undefined} data-test={test.id}>
      <button type="button" class="kept-open" onClick={onOpen}>
        <b>{name}</b>
        <span class="kept-parts">
          {current ? 'open now · ' : ''}
          {parts.filter(Boolean).join(' · ')}
        </span>
      </button>
      {asking ? (
        <div class="asking" role="alertdialog" aria-label={`Remove ${title}`}>
          <span>Readings, log and photos of {title} are removed. This cannot be undone.</span>
          <button type="button" onClick={() => void tests.saveAsFile(test.id)}>
            Save as a file first
          </button>
          <button type="button" class="grave" onClick={() => void tests.remove(test.id)}>
            Remove from this device
          </button>
          <button type="button" onClick={() => setAsking(false)}>
            Cancel
          </button>
        </div>
      ) : (
        <div class="kept-actions">
          <button type="button" onClick={onRetest}>
            Copy as retest<span class="unseen"> of {title}</span>
          </button>
          <button type="button" onClick={() => void tests.saveAsFile(test.id)}>
            Save as a file<span class="unseen">: {title}</span>
          </button>
          <button type="button" class="grave" onClick={() => setAsking(true)}>
            Remove from this device<span class="unseen">: {title}</span>
          </button>
        </div>
      )}
    </li>
  )
}

function Room({
  room: { used_bytes: used, whole_bytes: whole, lasting },
  onAsked,
}: {
  room: StorageRoom
  onAsked: () => void
}) {
  return (
    <div class="storage-room" data-lasting={lasting}>
      {used !== undefined && whole !== undefined ? (
        <p>
          Storage of this page: {sizeText(used)} of {sizeText(whole)} used
          {used > 0.8 * whole ? '. It is nearly full: save tests as files and remove them here' : ''}.
        </p>
      ) : null}
      {lasting === undefined ? (
        <p class="hint">This browser does not say how long it keeps tests: save finished ones as files.</p>
      ) : lasting ? (
        <p class="hint">The browser keeps the tests until you remove them.</p>
      ) : (
        <p class="hint">
          The browser may remove the tests when the device runs short of space.{' '}
          <button type="button" onClick={() => void askToKeep().then(onAsked)}>
            Ask the browser to keep them
          </button>
        </p>
      )}
    </div>
  )
}
