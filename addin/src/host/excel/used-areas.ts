import { type Finding, fileText, remarkFinding } from '@draughtbook/shared-calc/log'
import { type Area, parseArea } from '../address.js'
import type { OpenedSheet } from '../cell-sheet.js'

/** What is used of each sheet, in the order asked for; undefined for an empty one. */
export interface UsedAreas {
  readonly areas: readonly (Area | undefined)[]
  /** Said where the merged blocks are not known. */
  readonly findings: readonly Finding[]
}

/**
 * Asks for the used area of each sheet, and puts its merged blocks into the sheet, in one trip.
 * @param merged whether this Excel reports merged blocks: it needs ExcelApi 1.13
 */
export async function usedAreas(
  context: Excel.RequestContext,
  sheets: readonly OpenedSheet[],
  merged: boolean,
): Promise<UsedAreas> {
  if (!merged) return { areas: await areasOf(context, sheets), findings: unread([]) }
  try {
    const blocks = sheets.map((sheet) => mergedAreas(context, sheet))
    const areas = await areasOf(context, sheets)
    sheets.forEach((sheet, index) => {
      take(sheet, blocks[index])
    })
    return { areas, findings: [] }
  } catch {
    // Excel refuses a range with more than 512 merged blocks (office.js, Range.getMergedAreasOrNullObject), and the
    // whole trip with it. Asked sheet by sheet, only that one goes without; another fault comes up again here.
    const areas = await areasOf(context, sheets)
    const failed: string[] = []
    for (const [index, sheet] of sheets.entries())
      if (areas[index] && !(await asked(context, sheet))) failed.push(sheet.name)
    return { areas, findings: failed.length > 0 ? unread(failed) : [] }
  }
}

const unread = (sheets: readonly string[]): Finding[] => [
  remarkFinding(fileText('log-merged-unread', { sheets })),
]

const usedRange = (context: Excel.RequestContext, { name }: OpenedSheet): Excel.Range =>
  context.workbook.worksheets.getItem(name).getUsedRangeOrNullObject(true)

async function areasOf(
  context: Excel.RequestContext,
  sheets: readonly OpenedSheet[],
): Promise<(Area | undefined)[]> {
  const used = sheets.map((sheet) => {
    const range = usedRange(context, sheet)
    range.load('address')
    return range
  })
  await context.sync()
  return used.map((range) => (range.isNullObject ? undefined : parseArea(range.address)))
}

function mergedAreas(context: Excel.RequestContext, sheet: OpenedSheet): Excel.RangeAreas {
  const merged = usedRange(context, sheet).getMergedAreasOrNullObject()
  merged.load('areas/items/address')
  return merged
}

/** Whether Excel names the merged blocks of one sheet. */
async function asked(context: Excel.RequestContext, sheet: OpenedSheet): Promise<boolean> {
  try {
    const merged = mergedAreas(context, sheet)
    await context.sync()
    take(sheet, merged)
    return true
  } catch {
    return false
  }
}

function take(sheet: OpenedSheet, merged: Excel.RangeAreas | undefined): void {
  if (!merged || merged.isNullObject) return
  for (const { address } of merged.areas.items) {
    const area = parseArea(address)
    if (!area) continue
    const { top, left, bottom, right } = area
    sheet.merges.push({ top: top - 1, left: left - 1, bottom: bottom - 1, right: right - 1 })
  }
}
