import 'fake-indexeddb/auto'
import { randomFillSync } from 'node:crypto'
import JSZip from 'jszip'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type KeptTest, newTest, sizeOf } from '../../addin/src/kept/kept-test.js'
import { KeptTests } from '../../addin/src/kept/kept-tests.js'
import { OpenTest } from '../../addin/src/kept/open-test.js'
import { retestOf } from '../../addin/src/kept/retest.js'
import { sizeText } from '../../addin/src/kept/storage-room.js'
import { takeOver } from '../../addin/src/kept/take-over.js'
import { packTest, unpackTest } from '../../addin/src/kept/test-file.js'
import { emptyEntries, parseEntries, type TestEntries } from '../../addin/src/pane/one-test/entries.js'
import { emptyRun } from '../../addin/src/pane/one-test/typed/typed-run.js'

let kept: KeptTests
let count = 0
beforeEach(async () => {
  count += 1
  kept = await KeptTests.open(`kept-${count}`)
})

afterEach(() => vi.restoreAllMocks())

const EMPTY = JSON.stringify(emptyEntries())
const ABOUT = { name: 'Plot 12 (invented)', date: '2026-10-14', standing: 'Meets the target' }
const memory = () => {
  const texts = new Map<string, string>()
  return {
    texts,
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
    removeItem: (key: string) => void texts.delete(key),
    key: (i: number) => [...texts.keys()][i] ?? null,
    get length() {
      return texts.size
    },
  }
}
const bytes = (length: number): Uint8Array => new Uint8Array(randomFillSync(Buffer.alloc(length)))

describe('tests kept in the browser', () => {
  it('lists them with the one changed last first, and removes one with its log and photos only', async () => {
    const first = { ...newTest('1'), changed: 1 }
    const second = { ...newTest('2'), changed: 2 }
    for (const test of [first, second])
      await kept.putWhole(test, {
        log: bytes(10),
        photos: { 'leak-1.jpg': bytes(20), 'leak-2.jpg': bytes(5) },
      })
    expect((await kept.list()).map(({ entries }) => entries)).toEqual(['2', '1'])
    await kept.remove(second.id)
    expect((await kept.list()).map(({ entries }) => entries)).toEqual(['1'])
    expect(await kept.log(second.id)).toBeUndefined()
    expect(await kept.photo(second.id, 'leak-2.jpg')).toBeUndefined()
    expect(await kept.photo(first.id, 'leak-2.jpg')).toHaveLength(5)
    expect(await kept.log(first.id)).toHaveLength(10)
  })

  it('keeps no test in which nothing was entered', async () => {
    const open = new OpenTest(async () => kept, EMPTY, [])
    await open.save(EMPTY, ABOUT)
    expect(await kept.list()).toEqual([])
    await open.save('{"typed":1}', ABOUT)
    expect(await kept.list()).toMatchObject([{ entries: '{"typed":1}', about: ABOUT }])
  })

  it('finds the test of this tab first, then the one shown last in the browser, then the one changed last', async () => {
    const [mine, shown, newest] = [1, 2, 3].map((changed) => ({ ...newTest(String(changed)), changed }))
    for (const test of [mine, shown, newest]) if (test) await kept.put(test)
    const [tab, browser] = [memory(), memory()]
    expect((await new OpenTest(async () => kept, EMPTY, [tab, browser]).find())?.entries).toBe('3')
    new OpenTest(async () => kept, EMPTY, [memory(), browser]).take(shown)
    expect((await new OpenTest(async () => kept, EMPTY, [tab, browser]).find())?.entries).toBe('2')
    new OpenTest(async () => kept, EMPTY, [tab]).take(mine)
    expect((await new OpenTest(async () => kept, EMPTY, [tab, browser]).find())?.entries).toBe('1')
  })

  it('keeps of a cell typed twice the last value, and none once another file stands in its place', async () => {
    const open = new OpenTest(async () => kept, EMPTY, [])
    await open.takeLog(bytes(3), 'log.xlsx', '2026-10-14')
    for (const text of ['1', '2']) await open.edit({ sheet: 'Log', row: 3, column: 2, text })
    expect((await kept.get(open.now.id))?.edits).toEqual([{ sheet: 'Log', row: 3, column: 2, text: '2' }])
    await open.takeLog(bytes(3), 'log.xlsx', '2026-10-15')
    expect((await kept.get(open.now.id))?.edits).toEqual([])
  })

  it('leaves what another tab has entered alone when what follows from earlier entries is ready', async () => {
    const [slow, quick] = [
      new OpenTest(async () => kept, EMPTY, []),
      new OpenTest(async () => kept, EMPTY, []),
    ]
    await slow.save('{"typed":1}', { name: '', standing: '' })
    const [before] = await kept.list()
    quick.take(before)
    await quick.save('{"typed":2}', { name: '', standing: '' })
    await slow.save('{"typed":1}', ABOUT)
    expect(await kept.list()).toMatchObject([{ entries: '{"typed":2}' }])
    // It still knows less than what is kept, and takes that up when it comes to the front.
    expect(slow.now).toMatchObject({ entries: '{"typed":1}', changed: before?.changed })
    await quick.save('{"typed":2}', ABOUT)
    expect(await kept.list()).toMatchObject([{ entries: '{"typed":2}', about: ABOUT }])
  })

  it('removes photos that no row names, but none that another tab has entered since', async () => {
    const slow = new OpenTest(async () => kept, EMPTY, [])
    for (const length of [5, 7]) await slow.takePhoto('leak', bytes(length))
    const quick = new OpenTest(async () => kept, EMPTY, [])
    quick.take((await kept.list())[0])
    // The other tab's row names the second photo; this one still believes that no row does.
    await quick.save('{"row":"leak-2.jpg"}', ABOUT)
    await slow.dropPhotos(['leak-1.jpg'])
    expect(await kept.list()).toMatchObject([
      { entries: '{"row":"leak-2.jpg"}', photos: [{ name: 'leak-1.jpg' }, { name: 'leak-2.jpg' }] },
    ])
    expect(await kept.photo(slow.now.id, 'leak-2.jpg')).toHaveLength(7)

    await quick.dropPhotos(['leak-2.jpg'])
    expect(await kept.list()).toMatchObject([
      { entries: '{"row":"leak-2.jpg"}', photos: [{ name: 'leak-2.jpg' }] },
    ])
    expect(await kept.photo(slow.now.id, 'leak-1.jpg')).toBeUndefined()
  })

  it('says that nothing is kept where the browser has no database', async () => {
    const open = new OpenTest(async () => undefined, EMPTY, [])
    await expect(open.save('{"typed":1}', ABOUT)).rejects.toThrow('could not save your entries')
  })

  it('never calls kept what the browser refused, and keeps it once there is room', async () => {
    const open = new OpenTest(async () => kept, EMPTY, [])
    const full = vi.spyOn(KeptTests.prototype, 'put').mockRejectedValue(new DOMException('full'))
    await expect(open.save('{"typed":1}', ABOUT)).rejects.toThrow('could not save your entries')
    await expect(open.save('{"typed":1}', ABOUT)).rejects.toThrow('could not save your entries')
    full.mockRestore()
    await open.save('{"typed":1}', ABOUT)
    expect((await kept.list()).map(({ entries }) => entries)).toEqual(['{"typed":1}'])
  })

  it('lists a log and a photo that found no room as not kept, and says so', async () => {
    const open = new OpenTest(async () => kept, EMPTY, [])
    const full = vi.spyOn(KeptTests.prototype, 'putWhole').mockRejectedValue(new DOMException('full'))
    await expect(open.takeLog(bytes(3), 'log.xlsx', '2026-10-14')).rejects.toThrow('the log log.xlsx')
    await expect(open.takePhoto('leak', bytes(3))).rejects.toThrow('could not save this photo')
    full.mockRestore()
    await open.save('{"typed":1}', ABOUT)
    expect(await kept.get(open.now.id)).toMatchObject({ log: { name: 'log.xlsx', size: 0 }, photos: [] })
  })

  it('says that kept tests cannot be read where the browser fails', async () => {
    const open = new OpenTest(async () => kept, EMPTY, [memory()])
    const broken = vi.spyOn(KeptTests.prototype, 'list').mockRejectedValue(new DOMException('damaged'))
    await expect(open.find()).rejects.toThrow('could not be read')
    broken.mockRestore()
    expect(await open.find()).toBeUndefined()
  })

  it('keeps what is typed after the browser has closed the database', async () => {
    const name = `kept-${count}`
    const open = new OpenTest(() => KeptTests.open(name), EMPTY, [])
    await open.save('{"typed":1}', ABOUT)
    await open.read(async (base) => base.close())
    await open.save('{"typed":2}', ABOUT)
    expect((await kept.list()).map(({ entries }) => entries)).toEqual(['{"typed":2}'])
  })

  it('counts a change as later than the one it follows, also when the clock is set back', async () => {
    const open = new OpenTest(async () => kept, EMPTY, [])
    const tomorrow = Date.now() + 86_400_000
    open.take({ ...newTest('{"typed":1}'), changed: tomorrow })
    await open.save('{"typed":2}', ABOUT)
    expect((await kept.get(open.now.id))?.changed).toBeGreaterThan(tomorrow)
  })

  it('leaves what follows from another tab’s entries to that tab, until something is entered here', async () => {
    const told: string[] = []
    const open = new OpenTest(async () => kept, EMPTY, [], { tell: ({ what }) => void told.push(what) })
    open.takeFromOtherTab({ ...newTest('{"typed":1}'), changed: 5 })
    await open.save('{"typed":1}', { ...ABOUT, standing: 'as this tab sees it' })
    expect(await kept.list()).toEqual([])
    await open.save('{"typed":2}', ABOUT)
    expect((await kept.list()).map(({ entries }) => entries)).toEqual(['{"typed":2}'])
    expect(told).toEqual(['changed'])
  })

  it('takes over what earlier versions kept, by log and without one, and removes it there', async () => {
    const old = memory()
    old.setItem('draughtbook.test:', '{"own":1}')
    old.setItem('draughtbook.test:house.xlsx', '{"log":1}')
    old.setItem('draughtbook.test:broken.xlsx', 'broken')
    old.setItem('something else', 'stays')
    await takeOver(kept, old, (text) => (text === 'broken' ? undefined : 'Plot 12 (invented)'))
    const tests = await kept.list()
    expect(tests.map(({ entries, log }) => [entries, log?.name])).toContainEqual(['{"log":1}', 'house.xlsx'])
    expect(tests).toHaveLength(2)
    expect([...old.texts.keys()]).toEqual(['something else'])
  })
})

const ENTRIES: TestEntries = {
  version: 1,
  fields: {
    'building.name': { text: 'Plot 12 (invented)' },
    'building.volume_m3': { cell: 'Log!B4' },
    'building.floorArea_m2': { cell: 'Log!B5' },
    'test.date': { text: '2026-10-14' },
    'test.tester': { text: 'R. Ashdown (invented)' },
    'conditions.indoorTemperature_C': { text: '20' },
  },
  runs: { depressurisation: { typed: emptyRun() } },
  lists: {
    'leaks.list': [{ place: 'hatch', kind: 'hatch', photo: 'leak-1.jpg', fixed: 'no' }],
    'preparation.cautions': [{ caution: 'fuel-burning appliances', answer: 'taken care of' }],
  },
}

const whole = (): KeptTest => ({
  ...newTest(JSON.stringify(ENTRIES)),
  about: {
    ...ABOUT,
    whole: true,
    draft: { format: 'draughtbook/record@1', building: { volume_m3: 412.5 } },
    airLeakageRate50_m3_h: 381.25,
  },
  log: { name: 'house 12.xlsx', size: 1000, date: '2026-10-14' },
  edits: [{ sheet: 'Log', row: 4, column: 2, text: '412,5' }],
  photos: [{ name: 'leak-1.jpg', size: 2000 }],
})

describe('a retest', () => {
  it('takes house, tester and leaks along, and leaves the day and its readings to be entered', () => {
    const entries = parseEntries(retestOf(whole())?.entries ?? '')
    expect(entries?.fields).toEqual({
      'building.name': { text: 'Plot 12 (invented)' },
      // Read from a cell of the log before: now the value itself. The floor area had none.
      'building.volume_m3': { text: '412.5', kept: true },
      'test.tester': { text: 'R. Ashdown (invented)' },
      'test.stage': { text: 'retest' },
    })
    expect(entries?.runs).toEqual({})
    expect(entries?.lists).toEqual({
      'leaks.list': ENTRIES.lists?.['leaks.list'],
      'leaks.earlierTests': [{ date: '2026-10-14', airLeakageRate50_m3_h: '381.25' }],
    })
  })
})

describe('a test as one file', () => {
  const log = bytes(1000)
  const photo = bytes(2000)
  const file = () => packTest(whole(), log, { 'leak-1.jpg': photo })

  it('holds entries, record, log and photos, readable by any zip tool', async () => {
    const { name, bytes: packed } = file()
    expect(name).toBe('Plot-12-invented-2026-10-14-test.zip')
    const zip = await JSZip.loadAsync(packed)
    expect(
      Object.keys(zip.files)
        .filter((path) => !path.endsWith('/'))
        .sort(),
    ).toEqual(['log/house 12.xlsx', 'photos/leak-1.jpg', 'record.json', 'test.json'])
    expect(JSON.parse((await zip.file('record.json')?.async('string')) ?? '')).toEqual(whole().about.draft)
    expect(await zip.file('photos/leak-1.jpg')?.async('uint8array')).toEqual(photo)
  })

  it('comes back whole, as a test of its own', () => {
    const before = whole()
    const { test, log: logBack, photos } = unpackTest(file().bytes, 'x.zip')
    const { id, changed: _, about, ...rest } = test
    expect(id).not.toBe(before.id)
    expect(rest).toEqual({
      entries: before.entries,
      log: before.log,
      edits: before.edits,
      photos: before.photos,
    })
    expect(about).toMatchObject(ABOUT)
    expect(logBack).toEqual(log)
    expect(photos).toEqual({ 'leak-1.jpg': photo })
  })

  it('still reads the files of entries alone that were saved before', () => {
    const text = JSON.stringify({ format: 'draughtbook/test@1', entries: ENTRIES })
    expect(parseEntries(unpackTest(Buffer.from(text), 'old.json').test.entries)).toEqual(ENTRIES)
  })

  it.each([
    ['a.zip', Buffer.from('no zip'), 'it is not a zip file'],
    ['cut.zip', file().bytes.slice(0, 900), 'it is not a zip file, or it is cut off'],
    ['a.json', Buffer.from('{"format":"something else"}'), 'it was not made with "Save as a file"'],
    ['b.json', Buffer.from('{"format":'), 'it is not JSON'],
    ['c.json', Buffer.from('{"format":"draughtbook/test@2","entries":{}}'), 'its entries cannot be read'],
  ])('refuses %s in words', (name, given, words) => {
    expect(() => unpackTest(given, name)).toThrow(words)
  })

  it('refuses a zip that claims to be larger than any test before it unpacks it', async () => {
    const zip = new JSZip()
    for (let i = 0; i < 2200; i++) zip.file(`photos/${i}.jpg`, 'x')
    const many = await zip.generateAsync({ type: 'uint8array' })
    expect(() => unpackTest(many, 'many.zip')).toThrow('is too large to be a saved test')
  })
})

describe('sizes', () => {
  it('counts entries, log and photos, and says them in kB and MB', () => {
    expect(sizeOf(whole())).toBe(whole().entries.length + 3000)
    expect([999, 1200, 45_000, 3_400_000, 2.1e9].map(sizeText)).toEqual([
      '999 bytes',
      '1.2 kB',
      '45 kB',
      '3.4 MB',
      '2.1 GB',
    ])
  })
})
