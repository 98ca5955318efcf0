import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { evaluate, parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { choosePictures, type PictureSources, writeSummary } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { strFromU8, unzipSync, zipSync } from 'fflate'
import jpeg from 'jpeg-js'
import { beforeAll, describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line'
import { house } from '../site/support/house'
import { recalculate } from '../support/libreoffice'
import { BLUE, phonePhoto, placedPng, plainPhoto, RED, TOLD_PLACE, TOLD_TIME } from './support/made-photo'

/** The invented house with photos at its first two leaks. */
const photographed = (first = 'bath.jpg', second = 'Hatch.JPG'): TestRecord => {
  const record = structuredClone(house)
  for (const leak of record.leaks?.list ?? []) delete leak.photo
  const [one, two] = record.leaks?.list ?? []
  if (!one || !two) throw new Error('the house has no leaks')
  one.photo = first
  two.photo = second
  return parseRecord(record)
}

const photos = () =>
  new Map([
    ['bath.jpg', phonePhoto(1)],
    ['hatch.jpg', phonePhoto(6)],
    ['fan.png', placedPng()],
  ])

async function written(record: TestRecord, sources: PictureSources): Promise<Uint8Array> {
  return (await writeSummary(record, { pictures: await choosePictures(record, sources) })).bytes
}

const holds = (bytes: Uint8Array, text: string) => Buffer.from(bytes).includes(text)

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'archived.xlsx')
  if (!test) throw new Error('no test came back')
  return test
}

describe('photos and the firm’s logo in the summary workbook', () => {
  let bytes: Uint8Array
  let workbook: ExcelJS.Workbook
  beforeAll(async () => {
    bytes = await written(photographed(), {
      photos: photos(),
      firm: { name: 'Sample Test Office (invented)', logo: placedPng() },
    })
    workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes as never)
  })

  it('leak photos are on sheet Leaks, all photos on the test report, the logo on the summary', () => {
    const shown = (sheet: string) => workbook.getWorksheet(sheet)?.getImages().length
    expect(shown('Leaks')).toBe(2)
    expect(shown('Report')).toBe(3)
    expect(shown('Summary')).toBe(1)
  })

  it('each has its place as caption and as text for screen readers', () => {
    const [leak] = photographed().leaks?.list ?? []
    const caption = `Leak 1: ${leak?.place}, ${leak?.kind} (bath.jpg)`
    const texts: unknown[] = []
    workbook.getWorksheet('Leaks')?.eachRow((row) => row.eachCell(({ value }) => texts.push(value)))
    expect(texts).toContain(caption)
    const drawings = Object.entries(unzipSync(bytes)).filter(([path]) =>
      /drawings\/drawing\d+\.xml$/.test(path),
    )
    expect(drawings.some(([, xml]) => strFromU8(xml).includes(`descr="${caption}"`))).toBe(true)
    expect(texts).not.toContain('Set-up (fan.png)')
  })

  it('a photo on two sheets is held once, and says nothing of place and time', () => {
    const media = Object.entries(unzipSync(bytes)).filter(([path]) => path.startsWith('xl/media/'))
    expect(media).toHaveLength(4)
    for (const [, picture] of media) {
      expect(holds(picture, TOLD_PLACE)).toBe(false)
      expect(holds(picture, TOLD_TIME)).toBe(false)
      expect(holds(picture, 'Exif')).toBe(false)
    }
  })

  it('the summary has the firm’s name at its head', () => {
    expect(workbook.getWorksheet('Summary')?.getCell('C1').value).toBe('Sample Test Office (invented)')
  })

  it('the record, and so its digest, knows nothing of the pictures', async () => {
    const record = photographed()
    const { evaluation } = await writeSummary(record, {
      pictures: await choosePictures(record, { photos: photos() }),
    })
    expect(evaluation.recordDigest).toBe(evaluate(record).recordDigest)
  })

  it('re-run finds it exactly as issued', async () => {
    const test = await rerun(bytes)
    expect(test.differences).toEqual([])
    expect(test.outcome).toBe('exactly as issued')
  })

  it('re-run finds a picture that was exchanged, and one that is gone', async () => {
    const parts = unzipSync(bytes)
    const [path = ''] = Object.keys(parts).filter((name) => /media\/.*jpeg$/.test(name))
    const exchanged = await rerun(zipSync({ ...parts, [path]: plainPhoto(80, 40) }))
    expect(exchanged.outcome).toBe('differs')
    expect(exchanged.differences.map(({ label }) => label).join('; ')).toMatch(/picture/)
  })

  it('re-run finds no difference after LibreOffice has saved it', async () => {
    const test = await rerun(await recalculate(bytes))
    expect(test.differences.filter(({ rounding }) => !rounding)).toEqual([])
    expect(test.outcome).toBe('saved again')
  }, 120_000)
})

describe('a photo as it is taken over', () => {
  const only = async (source: Uint8Array, keepDetails = false) => {
    const { list } = await choosePictures(photographed('one.jpg', 'one.jpg'), {
      photos: new Map([['one.jpg', source]]),
      keepDetails,
    })
    const [picture, ...others] = list
    expect(others).toEqual([])
    if (!picture) throw new Error('the photo was not taken')
    return picture
  }

  /** Colour in the middle of a quarter of the picture; JPEG keeps it within a few steps. */
  const colour = (bytes: Uint8Array, right: boolean, lower: boolean) => {
    const { width, height, data } = jpeg.decode(bytes, { useTArray: true })
    const at = Math.floor((height * (lower ? 3 : 1)) / 4) * width + Math.floor((width * (right ? 3 : 1)) / 4)
    return [...data.subarray(at * 4, at * 4 + 3)]
  }
  const isRed = (found: number[]) => Math.abs((found[0] ?? 0) - RED[0]) < 30 && (found[2] ?? 0) < 60
  const isBlue = (found: number[]) => Math.abs((found[2] ?? 0) - BLUE[2]) < 30 && (found[0] ?? 0) < 60

  // Where the stored upper left quarter must be seen, by orientation: CIPA DC-008, tag 0112 ("0th row" and "0th column").
  it.each([
    [1, 'upper left'],
    [2, 'upper right'],
    [3, 'lower right'],
    [4, 'lower left'],
    [5, 'upper left'],
    [6, 'upper right'],
    [7, 'lower right'],
    [8, 'lower left'],
  ])('orientation %i is turned upright: red at the %s', async (orientation, place) => {
    const { bytes, width_px, height_px } = await only(phonePhoto(orientation))
    expect([width_px, height_px]).toEqual(orientation < 5 ? [64, 32] : [32, 64])
    for (const right of [false, true])
      for (const lower of [false, true]) {
        const red = place === `${lower ? 'lower' : 'upper'} ${right ? 'right' : 'left'}`
        expect((red ? isRed : isBlue)(colour(bytes, right, lower))).toBe(true)
      }
  })

  it('removing the details changes no pixel of an upright photo', async () => {
    const { bytes } = await only(phonePhoto(1))
    expect(jpeg.decode(bytes, { useTArray: true }).data).toEqual(
      jpeg.decode(plainPhoto(), { useTArray: true }).data,
    )
  })

  it('with its details it is left as it is, to the byte', async () => {
    const source = phonePhoto(6)
    expect(await only(source, true)).toMatchObject({ bytes: source, width_px: 64, height_px: 32 })
  })

  it('a large one is scaled down to 1600 pixels, all of it', async () => {
    const { bytes, width_px, height_px } = await only(phonePhoto(1, 2400, 1200))
    expect([width_px, height_px]).toEqual([1600, 800])
    expect(isRed(colour(bytes, false, false))).toBe(true)
    expect(isBlue(colour(bytes, true, true))).toBe(true)
  })
})

describe('what cannot be taken has a finding that names it', () => {
  const findingsOf = async (named: string, given: [string, Uint8Array][]) => {
    const { findings, list } = await choosePictures(photographed(named, named), { photos: new Map(given) })
    return { list, said: findings.map(({ rule, message, where }) => ({ rule, message, where })) }
  }
  const whole = plainPhoto()

  it.each<[string, string, [string, Uint8Array][], RegExp]>([
    ['one that is not there', 'gone.jpg', [], /^Photo "gone\.jpg" was not found/],
    [
      'one that is no picture',
      'a.jpg',
      [['a.jpg', new TextEncoder().encode('no picture')]],
      /neither a JPEG nor a PNG/,
    ],
    [
      'one that is cut short',
      'a.jpg',
      [['a.jpg', whole.subarray(0, whole.length - 40)]],
      /"a\.jpg" was left out: .*ends too early/,
    ],
    ['an empty one', 'a.jpg', [['a.jpg', new Uint8Array()]], /neither a JPEG nor a PNG/],
  ])('%s', async (_, named, given, message) => {
    const { said, list } = await findingsOf(named, given)
    expect(list).toEqual([])
    expect(said).toEqual([
      {
        rule: expect.stringMatching(/^photo-/),
        message: expect.stringMatching(message),
        where: ['leaks.list[0].photo', 'leaks.list[1].photo'],
      },
    ])
  })

  it('more than 24: the rest is counted and named', async () => {
    const many = Array.from({ length: 30 }, (_, i): [string, Uint8Array] => [`p${100 + i}.jpg`, whole])
    const { said, list } = await findingsOf('p129.jpg', many)
    expect(list).toHaveLength(24)
    expect(list[0]).toMatchObject({ name: 'p129.jpg', of: 'leak' })
    expect(said.map(({ message }) => message)).toEqual([
      'A workbook holds at most 24 photos. 6 were left out: p123.jpg, p124.jpg, p125.jpg, p126.jpg, p127.jpg, p128.jpg.',
    ])
  })

  it('stands in the workbook: evaluation, test report and check', async () => {
    const record = photographed('gone.jpg', 'gone.jpg')
    const { evaluation } = await writeSummary(record, {
      pictures: await choosePictures(record, { photos: new Map() }),
    })
    expect(evaluation.findings.map(({ rule }) => rule)).toContain('photo-missing')
  })
})

describe('evaluate --photos', () => {
  it('takes the photos of a folder, says which one is missing, and the workbook re-runs', async () => {
    const at = await folder()
    const record = join(at, 'house.json')
    await writeFile(record, JSON.stringify(photographed('bath.jpg', 'lost.jpg')))
    for (const [name, bytes] of photos()) await writeFile(join(at, name), bytes)
    const out = join(at, 'out.xlsx')
    const { code, out: said } = await commandLine('evaluate', record, '--photos', at, '--out', out)
    expect(code).toBe(0)
    expect(said).toContain('Photo "lost.jpg" was not found among the photos given.')
    const again = await commandLine('rerun', out, '--json')
    expect(JSON.parse(again.out).tests[0].outcome).toBe('exactly as issued')
  })

  it('a folder that is not there ends with an error that names it', async () => {
    const at = await folder()
    const record = join(at, 'house.json')
    await writeFile(record, JSON.stringify(photographed()))
    const { code, err } = await commandLine('evaluate', record, '--photos', join(at, 'none'))
    expect(code).toBe(2)
    expect(err.join('\n')).toMatch(/--photos: .*none/)
  })
})
