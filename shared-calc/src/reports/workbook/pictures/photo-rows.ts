import type { Worksheet } from 'exceljs'
import { dress, fonts, headingRow, wrap } from '../styles.js'
import type { PlacedPicture } from './add-pictures.js'
import type { Picture } from './picture.js'
import { columnsWidth_pt, fitted, placePicture } from './place-picture.js'

/** Points between photos. */
const GAP = 8
const MOST_HEIGHT = 190
const CAPTION_LINE = 12
const CAPTION_CHARACTER = 4.6

/**
 * Photos side by side under a heading, each above its caption; a row of the sheet for each row of photos.
 * @param blocks - first and last column of each place in a row of photos, counted from 1
 * @returns the next free row, and where the photos lie
 */
export function writePhotos(
  sheet: Worksheet,
  start: number,
  photos: readonly Picture[],
  {
    blocks,
    columns,
    note,
  }: { blocks: readonly (readonly [number, number])[]; columns: number; note: string },
): { row: number; placed: PlacedPicture[] } {
  if (photos.length === 0) return { row: start, placed: [] }
  // The heading, its note and the photos stay together: they begin a page of their own.
  if (start > 1) sheet.getRow(start - 1).addPageBreak()
  headingRow(sheet, start, 'Photos', columns)
  dress(sheet.getCell(start + 1, 1), { font: fonts.muted }).value = note
  const placed: PlacedPicture[] = []
  let row = start + 2
  for (let i = 0; i < photos.length; i += blocks.length) {
    const side = photos.slice(i, i + blocks.length)
    const sized = side.map((picture, k) => {
      const [from, to] = blocks[k] ?? [1, 1]
      const room_pt = columnsWidth_pt(sheet, from, to) - GAP
      return { picture, from, to, room_pt, size: fitted(picture, room_pt, MOST_HEIGHT) }
    })
    sheet.getRow(row).height = Math.max(...sized.map(({ size }) => size.height_pt)) + GAP
    const lines = sized.map(({ picture, room_pt }) =>
      Math.ceil((picture.caption.length * CAPTION_CHARACTER) / room_pt),
    )
    sheet.getRow(row + 1).height = CAPTION_LINE * Math.max(...lines)
    for (const { picture, from, to, size } of sized) {
      placed.push(placePicture(sheet, picture, { column: from, row, right_pt: 1, down_pt: GAP / 2 }, size))
      if (to > from) sheet.mergeCells(row + 1, from, row + 1, to)
      dress(sheet.getCell(row + 1, from), { font: fonts.small, alignment: wrap }).value = picture.caption
    }
    row += 2
  }
  return { row: row + 1, placed }
}

/** What removing or keeping the details of photos means for the reader. */
export const detailsNote = (detailsKept: boolean): string =>
  detailsKept
    ? 'The photos are unchanged; they may contain the place and time at which they were taken.'
    : 'The place and time at which the photos were taken, and the camera, have been removed from them.'
