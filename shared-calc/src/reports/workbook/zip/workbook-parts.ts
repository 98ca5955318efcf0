import type { Workbook } from 'exceljs'
import { holdTexts, withStandIns } from '../held-texts.js'
import { exceljsParts } from './exceljs-parts.js'
import { type Parts, STYLES_PART, writeParts } from './parts.js'
import { shareStyles } from './shared-styles.js'

/** The order of what a font holds. Source: ECMA-376 part 1, 18.8.22 (CT_Font), as Microsoft's validator reads it. */
const OF_A_FONT = [
  'b',
  'i',
  'strike',
  'condense',
  'extend',
  'outline',
  'shadow',
  'u',
  'vertAlign',
  'sz',
  'color',
  'name',
  'family',
  'charset',
  'scheme',
]

/** The parts of a workbook whose texts the format can hold; still without charts and pictures. */
export async function workbookParts(
  workbook: Workbook,
  fonts: 'in order' | 'as exceljs writes' = 'in order',
): Promise<Parts> {
  shareStyles(workbook)
  return exceljsParts(workbook, (path, text) =>
    path === STYLES_PART
      ? fonts === 'in order'
        ? text.replace(/<font>(?:<[^<>]*\/>)*<\/font>/g, inOrder)
        : text
      : withStandIns(path, text),
  )
}

/** A workbook without charts as a file: its texts made such that the format can hold them; equal content is equal bytes. */
export async function workbookBytes(workbook: Workbook): Promise<Uint8Array> {
  holdTexts(workbook)
  return writeParts(await workbookParts(workbook))
}

/** exceljs writes what a font holds in an order of its own. */
function inOrder(font: string): string {
  const held = font.match(/<[^<>]*\/>/g) ?? []
  const place = (element: string) => OF_A_FONT.indexOf(/^<(\w+)/.exec(element)?.[1] ?? '')
  return `<font>${held.sort((a, b) => place(a) - place(b)).join('')}</font>`
}
