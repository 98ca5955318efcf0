import type { Worksheet } from 'exceljs'
import type { Corner, PlacedPicture } from './add-pictures.js'
import type { Picture } from './picture.js'

/** Points that a character of a column's width takes: 7 pixels of 1/96 inch in the default font. Source: ECMA-376 part 1, 18.3.1.13. */
const POINTS_PER_CHARACTER = 5.25

/** Width of columns counted from 1, points. */
export function columnsWidth_pt(sheet: Worksheet, from: number, to: number): number {
  let sum = 0
  for (let column = from; column <= to; column += 1) sum += columnWidth_pt(sheet, column)
  return sum
}

const columnWidth_pt = (sheet: Worksheet, column: number): number =>
  (sheet.getColumn(column).width ?? 9.14) * POINTS_PER_CHARACTER

/**
 * A picture within one row, as large as the room allows.
 * @param at - column and row counted from 1, and where in that cell its upper left corner is
 */
export function placePicture(
  sheet: Worksheet,
  picture: Picture,
  at: Corner,
  size: { readonly width_pt: number; readonly height_pt: number },
): PlacedPicture {
  let column = at.column
  let right_pt = at.right_pt + size.width_pt
  while (right_pt > columnWidth_pt(sheet, column)) {
    right_pt -= columnWidth_pt(sheet, column)
    column += 1
  }
  const from = { ...at, column: at.column - 1, row: at.row - 1 }
  const to = { column: column - 1, row: at.row - 1, right_pt, down_pt: at.down_pt + size.height_pt }
  return { sheetName: sheet.name, picture, from, to }
}

/** The largest size of a picture that fits. */
export function fitted(
  { width_px, height_px }: Picture,
  width_pt: number,
  height_pt: number,
): { width_pt: number; height_pt: number } {
  const scale = Math.min(width_pt / width_px, height_pt / height_px)
  return { width_pt: width_px * scale, height_pt: height_px * scale }
}
