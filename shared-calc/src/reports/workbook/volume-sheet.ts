import type { Workbook } from 'exceljs'
import type { EnvelopeElement, Space, TakeOff } from '../../contract/record/index.js'
import type { Block } from '../../engine/index.js'
import { basesInWords } from '../../site/take-off/bases-in-words.js'
import type { PlacedRow } from '../../site/take-off/rows.js'
import type { WorkedTakeOff } from '../../site/take-off/work-take-off.js'
import { live, logged, type Shown, writeLine, writeTable } from './live-cell.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fonts, headingRow } from './styles.js'

/** Rows that can still be read when they are fitted to one page. */
const ONE_PAGE = 80

export const VOLUME = 'Volume'
const COLUMNS = 8
const WIDE = { columns: COLUMNS, perRow: 150 }

/** Volume and areas, room by room and element by element, both bases, with uncertainties; every figure refers to Working. */
export function writeVolumeSheet(
  workbook: Workbook,
  takeOff: TakeOff,
  worked: WorkedTakeOff,
  places: Places,
): void {
  const sheet = workbook.addWorksheet(VOLUME, { views: [{ showGridLines: false }] })
  sheet.columns = [34, 13, 15, 24, 12, 12, 12, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Volume and areas'
  let row = totals(3)
  headingRow(sheet, row + 1, 'Spaces', COLUMNS)
  row = writeTable(
    sheet,
    row + 2,
    [
      { head: 'space', align: 'left' },
      { head: 'storey', align: 'left' },
      { head: 'included in', align: 'left' },
      { head: 'solid', align: 'left' },
      { head: 'volume\nm³' },
      { head: 'std unc.\nm³' },
      { head: 'plan area\nm²' },
      { head: 'floor\ncounts', align: 'center' },
    ],
    takeOff.spaces.map((space, i) => spaceRow(space, i)),
  )
  if (takeOff.elements && takeOff.elements.length > 0) {
    headingRow(sheet, row + 1, 'Envelope', COLUMNS)
    row = writeTable(
      sheet,
      row + 2,
      [
        { head: 'element', align: 'left' },
        { head: 'kind', align: 'left' },
        { head: 'number' },
        { head: 'figure', align: 'left' },
        { head: 'area\nm²' },
        { head: 'std unc.\nm²' },
      ],
      takeOff.elements.map((element, i) => elementRow(element, i)),
    )
    row = writeTable(
      sheet,
      row + 1,
      [{ head: 'by kind', align: 'left' }, { head: 'area\nm²' }, { head: 'std unc.\nm²' }],
      [...worked.byKind].map(([kind, block]) => [
        kind,
        live(places, block, 'A_t', '0.00'),
        live(places, block, 'u_t', '0.00'),
      ]),
    )
  }
  if (worked.stated.size > 0) {
    headingRow(sheet, row + 1, `Compared with "${takeOff.stated?.from ?? ''}"`, COLUMNS)
    row = writeTable(
      sheet,
      row + 2,
      [
        { head: 'total', align: 'left' },
        { head: 'stated' },
        { head: 'calculated' },
        { head: 'difference' },
        { head: 'share' },
        { head: 'U (k = 2)' },
      ],
      [...worked.stated].map(([field, block]) => [
        statedName(field, takeOff),
        live(places, block, 'v_s', '0.00'),
        live(places, block, 'v_w', '0.00'),
        live(places, block, 'd_s', '+0.00;-0.00;0.00'),
        live(places, block, 'd_r', '+0.0 %;-0.0 %;0.0 %'),
        live(places, block, 'U_w', '0.00'),
      ]),
    )
  }
  headingRow(sheet, row + 1, 'The two volumes', COLUMNS)
  row += 2
  for (const words of basesInWords(takeOff, worked)) row = writeLine(sheet, row, words, WIDE)
  setUpPage(sheet, {
    landscape: true,
    title: 'Volume and areas',
    lastRow: row,
    lastColumn: COLUMNS,
    onePage: row <= ONE_PAGE,
  })

  function totals(start: number): number {
    const lines: [string, Block<string> | undefined, string, string][] = [
      ['Net internal volume', worked.net, 'V', 'm³'],
      ['Overall internal volume', worked.overall, 'V', 'm³'],
      ['Floor area', worked.floor, 'A_t', 'm²'],
      ['Envelope area', worked.envelope, 'A_t', 'm²'],
    ]
    return writeTable(
      sheet,
      start,
      [
        { head: 'total', align: 'left' },
        { head: 'value' },
        { head: 'std unc.' },
        { head: 'unit', align: 'left' },
      ],
      lines.flatMap(([name, block, symbol, unit]): (Shown | string)[][] =>
        block
          ? [[name, live(places, block, symbol, '0.00'), live(places, block, 'u_t', '0.00'), unit]]
          : [[name, 'not in the take-off', '', '']],
      ),
    )
  }

  function spaceRow(space: Space, i: number): (Shown | string)[] {
    const { block, row: at } = worked.spaces.get(space) as PlacedRow
    const path = `takeOff.spaces[${i}]`
    return [
      logged(places, `${path}.name`, space.name),
      logged(places, `${path}.storey`, space.storey),
      logged(places, `${path}.countsIn`, space.countsIn),
      solidText(space),
      live(places, block, 'V_i', '0.00', at),
      live(places, block, 'u_V', '0.00', at),
      live(places, block, 'A_i', '0.00', at),
      space.countsAsFloor ? 'yes' : 'no',
    ]
  }

  function elementRow(element: EnvelopeElement, i: number): (Shown | string | number)[] {
    const { block, row: at } = worked.elements.get(element) as PlacedRow
    const path = `takeOff.elements[${i}]`
    return [
      logged(places, `${path}.name`, element.name),
      element.kind,
      element.count ?? 1,
      element.figure.shape + (element.use === 'exclude' ? `, subtracted: ${element.reason ?? ''}` : ''),
      live(places, block, 'A_i', '0.00', at),
      live(places, block, 'u_A', '0.00', at),
    ]
  }
}

function solidText({ solid, count, use, reason }: Space): string {
  const number = count !== undefined && count > 1 ? `${count} × ` : ''
  return `${number}${solid.shape}${use === 'exclude' ? `, subtracted: ${reason ?? ''}` : ''}`
}

function statedName(field: string, { stated }: TakeOff): string {
  if (field === 'volume_m3') return `internal volume, ${stated?.volumeBasis ?? 'net (basis not stated)'}, m³`
  return field === 'floorArea_m2' ? 'floor area, m²' : 'envelope area, m²'
}
