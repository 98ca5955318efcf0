import type { Worksheet } from 'exceljs'
import type { PlacedPicture } from './pictures/add-pictures.js'
import type { Pictures } from './pictures/picture.js'
import { fitted, placePicture } from './pictures/place-picture.js'
import { dress, fonts } from './styles.js'
import { SUMMARY_COLUMNS } from './summary-input.js'

const HEIGHT = 26
const HEIGHT_WITH_LOGO = 44
/** Room for the logo: the last column but a little. */
const LOGO_WIDTH = 120
const LOGO_HEIGHT = 38

/** The title, and right of it the firm's name; its logo goes into the last column. */
export function writeHead(sheet: Worksheet, title: string, pictures: Pictures | undefined): void {
  const logo = logoOf(pictures)
  sheet.getRow(1).height = logo ? HEIGHT_WITH_LOGO : HEIGHT
  dress(sheet.getCell(1, 1), { font: fonts.title, alignment: { vertical: 'middle' } }).value = title
  const name = pictures?.firmName
  if (!name) return
  const last = logo ? SUMMARY_COLUMNS - 1 : SUMMARY_COLUMNS
  sheet.mergeCells(1, 3, 1, last)
  dress(sheet.getCell(1, 3), {
    font: fonts.bold,
    alignment: { horizontal: 'right', vertical: 'middle', wrapText: true },
  }).value = name
}

/** Where the firm's logo lies: at the right of the head. */
export function placeLogo(sheet: Worksheet, pictures: Pictures | undefined): PlacedPicture[] {
  const picture = logoOf(pictures)
  if (!picture) return []
  const size = fitted(picture, LOGO_WIDTH, LOGO_HEIGHT)
  const at = {
    column: SUMMARY_COLUMNS,
    row: 1,
    right_pt: LOGO_WIDTH - size.width_pt + 5,
    down_pt: (HEIGHT_WITH_LOGO - size.height_pt) / 2,
  }
  return [placePicture(sheet, picture, at, size)]
}

const logoOf = (pictures: Pictures | undefined) => pictures?.list.find(({ of }) => of === 'logo')
