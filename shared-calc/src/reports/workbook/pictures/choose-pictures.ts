import { finding } from '../../../catalogue/findings/finding.js'
import { capital } from '../../../catalogue/words.js'
import type { Finding, TestRecord } from '../../../contract/record/index.js'
import { heldText } from '../../../contract/record/text-field.js'
import { PICTURE_LIMITS, type Picture, type Pictures } from './picture.js'
import { readPicture } from './read-picture.js'

/** The bytes of a photo, or how to fetch them: a folder of photos need not fit into memory. */
export type PhotoBytes = Uint8Array | (() => Promise<Uint8Array>)

/** Pictures as they come from a folder, a camera or the firm's library. */
export interface PictureSources {
  /**
   * File name → a JPEG or PNG. A photo that a leak names, in capitals or not, is shown as that of the leak; all others are of the
   * set-up.
   */
  readonly photos?: ReadonlyMap<string, PhotoBytes>
  /** Of a folder that several tests share: names, in small letters, of photos that leaks of other tests name. */
  readonly ofOthers?: ReadonlySet<string>
  /** Shown at the head of the summary. */
  readonly firm?: { readonly name?: string; readonly logo?: Uint8Array }
  /** Leaves place, time and camera in the photos; they are removed otherwise. */
  readonly keepDetails?: boolean
}

/** The pictures of a workbook, and what could not be taken. */
export type ChosenPictures = Pictures & { readonly findings: readonly Finding[] }

/**
 * Chooses the pictures of a test: turned upright, scaled down, without place and time, and at most as many and as large as
 * PICTURE_LIMITS says. Those of leaks come first. Whatever is missing or left out has a finding.
 */
export async function choosePictures(
  record: TestRecord,
  { photos = new Map(), ofOthers = new Set(), firm, keepDetails = false }: PictureSources,
): Promise<ChosenPictures> {
  const findings: Finding[] = []
  const list: Picture[] = []
  const tooMany: Wanted[] = []
  let total = 0
  const given = new Map([...photos].map(([name, bytes]) => [name.toLowerCase(), bytes]))
  for (const wanted of [...leakPhotos(record), ...setUpPhotos(record, photos, ofOthers)]) {
    const { name, of, caption, where } = wanted
    const source = given.get(name.toLowerCase())
    if (!source) findings.push(finding('photo-missing', { where }, { name }))
    else if (list.length >= PICTURE_LIMITS.photos) tooMany.push(wanted)
    else
      try {
        const picture = await readPicture(source instanceof Uint8Array ? source : await source(), keepDetails)
        if (total + picture.bytes.length > PICTURE_LIMITS.allBytes)
          throw new RangeError('all photos together would take more than 12 MB')
        total += picture.bytes.length
        list.push({ name, of, caption, ...picture })
      } catch (error) {
        findings.push(finding('photo-left-out', { where }, { name, why: reason(error) }))
      }
  }
  if (tooMany.length > 0) {
    const where = tooMany.flatMap((one) => one.where)
    const names = tooMany.map(({ name }) => name)
    findings.push(finding('photo-left-out/too-many', { where }, { names, most: PICTURE_LIMITS.photos }))
  }
  const logo = firm?.logo && (await readLogo(firm.logo, firm.name, findings))
  return {
    ...(firm?.name && { firmName: heldText(firm.name) }),
    list: logo ? [logo, ...list] : list,
    detailsKept: keepDetails,
    findings,
  }
}

interface Wanted {
  readonly name: string
  readonly of: 'set-up' | 'leak'
  readonly caption: string
  readonly where: readonly string[]
}

/** Each photo once, with all the leaks that name it. */
function leakPhotos({ leaks }: TestRecord): Wanted[] {
  const byName = new Map<string, { places: string[]; where: string[] }>()
  for (const [i, { photo, place, kind }] of (leaks?.list ?? []).entries()) {
    if (!photo) continue
    const found = byName.get(photo) ?? { places: [], where: [] }
    found.places.push(`leak ${i + 1}: ${place}, ${kind}`)
    found.where.push(`leaks.list[${i}].photo`)
    byName.set(photo, found)
  }
  return [...byName].map(([name, { places, where }]) => ({
    name,
    of: 'leak',
    caption: heldText(`${capital(places.join('; '))} (${name})`),
    where,
  }))
}

function setUpPhotos(
  { leaks }: TestRecord,
  photos: ReadonlyMap<string, PhotoBytes>,
  ofOthers: ReadonlySet<string>,
): Wanted[] {
  const named = new Set(leaks?.list.map(({ photo }) => photo?.toLowerCase()))
  return [...photos.keys()]
    .filter((name) => !named.has(name.toLowerCase()) && !ofOthers.has(name.toLowerCase()))
    .sort()
    .map((name) => ({ name, of: 'set-up', caption: heldText(`Set-up (${name})`), where: [] }))
}

async function readLogo(
  bytes: Uint8Array,
  firmName: string | undefined,
  findings: Finding[],
): Promise<Picture | undefined> {
  try {
    if (bytes.length > PICTURE_LIMITS.logoBytes) throw new RangeError('it is larger than 512 kB')
    const picture = await readPicture(bytes, false)
    return {
      name: 'logo',
      of: 'logo',
      caption: firmName ? heldText(`Logo of ${firmName}`) : 'Logo of the firm',
      ...picture,
    }
  } catch (error) {
    findings.push(finding('photo-logo', { where: [] }, { why: reason(error) }))
    return undefined
  }
}

const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error))
