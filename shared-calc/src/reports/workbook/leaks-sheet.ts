import type { Workbook } from 'exceljs'
import { dayInWords } from '../../catalogue/words.js'
import type { Leak, LeakLog } from '../../contract/record/index.js'
import { directionsInWords } from '../../site/leaks/directions-in-words.js'
import type { WorkedHole, WorkedLeaks } from '../../site/leaks/work-leaks.js'
import { sizeWords } from '../../site/leaks/work-leaks.js'
import { live, logged, type Shown, writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import type { PlacedPicture } from './pictures/add-pictures.js'
import { detailsNote, writePhotos } from './pictures/photo-rows.js'
import type { Pictures } from './pictures/picture.js'
import type { Places } from './places.js'
import { dress, fonts, headingRow } from './styles.js'

export const LEAKS = 'Leaks'
const COLUMNS = 9
/** First and last columns of the places in a row of photos. */
const PHOTO_BLOCKS = [
  [1, 2],
  [3, 5],
  [6, 9],
] as const
const WIDE = { columns: COLUMNS, perRow: 165 }

/** The leak log, what is left to seal, what each repair round brought, and why the directions may differ. */
export function writeLeaksSheet(
  workbook: Workbook,
  log: LeakLog,
  worked: WorkedLeaks,
  places: Places,
  pictures?: Pictures,
): PlacedPicture[] {
  const sheet = workbook.addWorksheet(LEAKS, { views: [{ showGridLines: false }] })
  sheet.columns = [32, 20, 13, 17, 22, 11, 11, 11, 18].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Leaks'
  headingRow(sheet, 3, 'Still to seal', COLUMNS)
  let row = writeTable(
    sheet,
    4,
    [
      { head: 'to meet', align: 'left' },
      { head: 'flow\nm³/h' },
      { head: 'area\ncm²' },
      { head: 'one square hole\nmm' },
      { head: 'or one round hole\nmm' },
    ],
    [
      ...worked.toSeal.flatMap(({ criterion, now, aged }) => [
        sealRow(`the target for ${criterion.quantity}`, now),
        ...aged.map(({ growth, hole }) =>
          sealRow(`the target, allowing ${Math.round(growth * 100)} % for ageing`, hole),
        ),
      ]),
      sealRow('the total leakage at 50 Pa', worked.whole),
    ],
  )
  headingRow(sheet, row + 1, 'Leak log', COLUMNS)
  row = writeTable(
    sheet,
    row + 2,
    [
      { head: 'place', align: 'left' },
      { head: 'kind', align: 'left' },
      { head: 'found by', align: 'left' },
      { head: 'seen under', align: 'left' },
      { head: 'size', align: 'left' },
      { head: 'area\ncm²' },
      { head: 'of the\ntotal' },
      { head: 'fixed', align: 'center' },
      { head: 'photo', align: 'left' },
    ],
    log.list.map((leak, i) => leakRow(leak, i)),
  )
  if (worked.rounds.length > 0) {
    headingRow(sheet, row + 1, 'Result of each repair round', COLUMNS)
    row = writeTable(
      sheet,
      row + 2,
      [
        { head: 'round', align: 'left' },
        { head: 'before\nm³/h' },
        { head: 'after\nm³/h' },
        { head: 'gain\nm³/h' },
        { head: 'repairs', align: 'left' },
        { head: 'share' },
        { head: 'area\ncm²' },
      ],
      worked.rounds.map(({ before, compared, hole }, i) => [
        `${i + 1}, after the test of ${dayInWords(before.date)}`,
        live(places, compared, 'q_a', '0'),
        live(places, compared, 'q_b', '0'),
        live(places, compared, 'd_ab', '+0;-0;0'),
        logged(places, `leaks.earlierTests[${i}].repairsAfter`, before.repairsAfter),
        live(places, compared, 's_ab', '+0 %;-0 %;0 %'),
        live(places, hole.seal, 'A_s', '0'),
      ]),
    )
  }
  headingRow(sheet, row + 1, 'The two directions', COLUMNS)
  row += 2
  for (const words of directionsInWords(worked, log)) row = writeLine(sheet, row, words, WIDE)
  row = writeLine(
    sheet,
    row + 1,
    'Areas are those of sharp-edged holes (discharge coefficient 0.61), at the reference pressure of the target for leakage still to seal and at 50 Pa otherwise. Sizes in words are rough (common practice, no source).',
    { ...WIDE, font: fonts.muted },
  )
  const photos = writePhotos(sheet, row + 1, pictures?.list.filter(({ of }) => of === 'leak') ?? [], {
    blocks: PHOTO_BLOCKS,
    columns: COLUMNS,
    note: detailsNote(pictures?.detailsKept ?? false),
  })
  const lastRow = photos.placed.length > 0 ? photos.row - 2 : row
  setUpPage(sheet, { landscape: true, title: 'Leaks', lastRow, lastColumn: COLUMNS })
  return photos.placed

  function sealRow(name: string, { seal, sizes }: WorkedHole): (Shown | string)[] {
    return [
      name,
      live(places, seal, 'q_s', '0'),
      live(places, seal, 'A_s', '0.0'),
      live(places, sizes, 'a_q', '0'),
      live(places, sizes, 'd_q', '0'),
    ]
  }

  function leakRow(leak: Leak, i: number): (Shown | string | undefined)[] {
    const path = `leaks.list[${i}]`
    const at = worked.sized.indexOf(leak)
    const { flows } = worked
    const sized = flows && at >= 0 ? flows : undefined
    return [
      logged(places, `${path}.place`, leak.place),
      logged(places, `${path}.kind`, leak.kind),
      logged(places, `${path}.foundBy`, leak.foundBy),
      logged(places, `${path}.seenUnder`, leak.seenUnder),
      sizeText(leak),
      sized && live(places, sized, 'A_h', '0.0', at),
      sized && live(places, sized, 's_A', '0 %', at),
      leak.fixed ? (leak.fixedInRound === undefined ? 'yes' : `round ${leak.fixedInRound}`) : 'open',
      logged(places, `${path}.photo`, leak.photo),
    ]
  }
}

function sizeText({ size, count = 1 }: Leak): string {
  if (!size) return 'not estimated'
  const number = count > 1 ? `${count} × ` : ''
  const length = size.length_m === undefined ? '' : `, ${size.length_m} m long`
  if (size.words) return `${number}${size.words}${length} (${sizeWords[size.words].likeness})`
  if (size.width_mm !== undefined) return `${number}${size.width_mm} mm${length}`
  if (size.diameter_mm !== undefined) return `${number}round, ${size.diameter_mm} mm`
  return `${number}${size.area_cm2 ?? 0} cm²`
}
