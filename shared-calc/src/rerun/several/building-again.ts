import type { Workbook } from 'exceljs'
import type { Grid } from '../../log/grid/grid.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import { fileOfLink } from '../../reports/workbook/file-link.js'
import type { SeveralParts } from '../../versions/version.js'
import { linksOfCells } from './links-of-cells.js'
import { type MadeOfTests, numberAt, type PartOf, textAt } from './made-of-tests.js'

type Written = SeveralParts['building']
type Given = Written['homes']['given']

/** A building of several homes as a version writes it: a row of sheet Homes for each. */
export const buildingAgain = (written: Written): MadeOfTests => ({
  words: 'building',
  copied: {
    sheet: written.homes.sheet,
    first: written.homes.first,
    columns: written.homes.columns.file - 1,
  },
  parts: (grid, bytes) => partsOf(written, grid, bytes),
  layOut: (grid, homes): Workbook => {
    const { rules, ruleWords, statedIn } = written
    const sheet = grid.sheet(written.sheet)
    const { name, rule } = statedIn
    const stated = rules.find((one) => ruleWords[one] === textAt(sheet, rule.row, rule.column))
    const facts = factsOf(written, grid)
    return written.layOut({
      name: textAt(sheet, name.row, name.column),
      homes,
      // Where nobody asked for a rule, a note says which is used instead.
      ...(stated !== undefined && !followsFromTarget(written, grid) && { rule: stated }),
      ...facts,
      ...(homes.length > (facts.homesInBuilding ?? 0) && { homesInBuilding: homes.length }),
    })
  },
})

function partsOf({ homes }: Written, grid: Grid, bytes: Uint8Array): PartOf[] {
  const sheet = grid.sheet(homes.sheet)
  const links = linksOfCells(archivedParts(bytes), homes.sheet)
  const parts: PartOf[] = []
  for (let row = homes.first; row <= (sheet?.rows ?? 0); row += 1) {
    const file = textAt(sheet, row, homes.columns.file)
    const plot = textAt(sheet, row, homes.columns.name)
    if (file === '' && plot === '') continue
    const link = links.get(`${row}|${homes.columns.file}`)
    const given = link === undefined ? undefined : fileOfLink(link)
    parts.push({
      row,
      file,
      plot,
      date: textAt(sheet, row, homes.columns.date),
      // A link to another file than the one named is a difference of its own.
      ...(given?.endsWith(file) && { given }),
    })
  }
  return parts
}

/** What was entered for the building, by the labels above its homes. */
function factsOf({ homes }: Written, grid: Grid): Partial<Record<keyof Given, number>> {
  const sheet = grid.sheet(homes.sheet)
  const found: Partial<Record<keyof Given, number>> = {}
  for (let row = homes.facts.first; row < homes.first; row += 1)
    for (const [key, label] of Object.entries(homes.given) as [keyof Given, string][]) {
      const value = numberAt(sheet, row, homes.facts.value)
      if (textAt(sheet, row, homes.facts.label) === label && value !== undefined) found[key] = value
    }
  return found
}

function followsFromTarget({ sheet: name, ruleFollows }: Written, grid: Grid): boolean {
  const sheet = grid.sheet(name)
  for (let row = 1; row <= (sheet?.rows ?? 0); row += 1)
    if (ruleFollows.some((text) => textAt(sheet, row, 1).includes(text))) return true
  return false
}
