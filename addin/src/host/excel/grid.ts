import type { DefinedName, Grid } from '@draughtbook/shared-calc/log'
import { type Area, bands, cellCount, intersection, parseArea, union } from '../address.js'
import { CellSheet, type OpenedSheet } from '../cell-sheet.js'
import { HostError, MOST_CELLS } from '../host.js'
import { dateSystem, type ShownDate } from './date-system.js'
import { readBands, type SheetBand } from './read-bands.js'
import { usedAreas } from './used-areas.js'

/** With formulas, types and fonts a cell takes some 130 bytes of the 5 MB an answer may have in Excel on the web. */
const CELLS_PER_ANSWER = 25_000
/** Picks of one sheet within a block of this size are read as that block: few trips count more than few cells. */
const ONE_BLOCK = 6_000

/**
 * The cells of the references, or all used cells, as the log reader takes them. However many references there are,
 * Excel is asked three times: every trip takes it tens of milliseconds.
 * @param merged whether this Excel reports merged blocks
 */
export async function readGrid(
  context: Excel.RequestContext,
  merged: boolean,
  references?: readonly string[],
): Promise<Grid> {
  const { workbook } = context
  const { worksheets, names } = workbook
  workbook.load('name')
  worksheets.load('items/name,items/visibility')
  names.load('items/name,items/value,items/type')
  const active = worksheets.getActiveWorksheet()
  active.load('name')
  await context.sync()
  const defined = names.items.flatMap(({ name, value, type }) =>
    type === 'Range' ? definedName(name, String(value)) : [],
  )
  const opened = new Map<string, OpenedSheet>(
    worksheets.items.map(({ name, visibility }) => [
      name.toLowerCase(),
      { name, hidden: visibility !== 'Visible', cells: [], hiddenRows: [], hiddenColumns: [], merges: [] },
    ]),
  )
  const wanted = references ? areasBySheet(references, defined, active.name) : undefined
  const sheets = [...opened].filter(([key]) => !wanted || wanted.has(key)).map(([, sheet]) => sheet)
  const used = await usedAreas(context, sheets, merged)
  const cut = sheets.flatMap((into, index): SheetBand[] => {
    const whole = used.areas[index]
    if (!whole) return []
    const areas = wanted?.get(into.name.toLowerCase())
    return blocksOf(areas && withMerged(areas, into.merges), whole, into.name).flatMap((block) =>
      bands(block, CELLS_PER_ANSWER).map((area) => ({ into, area })),
    )
  })
  const dates: ShownDate[] = []
  for (const batch of batches(cut)) dates.push(...(await readBands(context, batch)))
  const read = [...opened.values()].map((sheet) => new CellSheet(sheet))
  const { date1904, findings } = dateSystem(dates)
  return {
    kind: 'ranges',
    fileName: workbook.name,
    sheetNames: read.map(({ name }) => name),
    sheet: (name) => read.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase()),
    names: defined,
    date1904,
    findings: [...used.findings, ...findings],
  }
}

/** The areas, and the top left cells of the merged blocks that reach into them: those hold the values. */
const withMerged = (areas: readonly Area[], merges: OpenedSheet['merges']): Area[] => [
  ...areas,
  ...merges.map(fromBlock).flatMap((block): Area[] => {
    const { top, left } = block
    const corner = { top, left, bottom: top, right: left }
    const isOutside = areas.some((area) => intersection(area, block) && !intersection(area, corner))
    return isOutside ? [corner] : []
  }),
]

/** What is asked for, by sheet in small letters. What stands for no cells is told of by whoever looks for it. */
function areasBySheet(
  references: readonly string[],
  names: readonly DefinedName[],
  activeSheet: string,
): Map<string, Area[]> {
  const bySheet = new Map<string, Area[]>()
  for (const reference of references) {
    const name = names.find((candidate) => candidate.name.toLowerCase() === reference.toLowerCase())
    const area = name ? { ...fromBlock(name.block), sheet: name.sheet } : parseArea(reference)
    if (!area) continue
    const key = (area.sheet ?? activeSheet).toLowerCase()
    bySheet.set(key, [...(bySheet.get(key) ?? []), widened(area)])
  }
  return bySheet
}

/** Blocks to read of one sheet, within what is used of it. */
function blocksOf(areas: readonly Area[] | undefined, used: Area, sheet: string): Area[] {
  const clipped = areas ? areas.flatMap((area) => intersection(area, used) ?? []) : [used]
  const [first, ...rest] = clipped
  if (!first) return []
  const all = rest.reduce(union, first)
  const blocks = cellCount(all) <= ONE_BLOCK ? [all] : clipped
  const cells = blocks.reduce((sum, block) => sum + cellCount(block), 0)
  if (cells > MOST_CELLS)
    throw new HostError(
      'too-large',
      `Sheet ${sheet} has ${cells} cells to read; at most ${MOST_CELLS} are read. Pick smaller ranges.`,
    )
  return blocks
}

/** Bands put together as far as one answer holds them. */
function batches(cut: readonly SheetBand[]): SheetBand[][] {
  const groups: SheetBand[][] = []
  let room = 0
  for (const band of cut) {
    const cells = cellCount(band.area)
    if (groups.length === 0 || cells > room) {
      groups.push([])
      room = CELLS_PER_ANSWER
    }
    groups.at(-1)?.push(band)
    room -= cells
  }
  return groups
}

/** Headings above and units beside the cells asked for belong to how they are read. */
const widened = (area: Area): Area => ({
  ...area,
  top: Math.max(1, area.top - 4),
  left: Math.max(1, area.left - 1),
  right: area.right + 1,
})

const fromBlock = ({ top, left, bottom, right }: DefinedName['block']): Area => ({
  top: top + 1,
  left: left + 1,
  bottom: bottom + 1,
  right: right + 1,
})

function definedName(name: string, value: string): DefinedName[] {
  const area = parseArea(value.replace(/^=/, ''))
  if (area?.sheet === undefined) return []
  const block = { top: area.top - 1, left: area.left - 1, bottom: area.bottom - 1, right: area.right - 1 }
  return [{ name, sheet: area.sheet, block }]
}
