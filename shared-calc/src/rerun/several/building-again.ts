import type { Workbook } from 'exceljs'
import { buildingRules, ruleWords } from '../../assessment/building/work-building.js'
import { homesText } from '../../catalogue/findings/several-homes.js'
import type { Grid } from '../../log/grid/grid.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import { BUILDING, statedIn } from '../../reports/building/building-sheet.js'
import { FACTS, FIRST_HOME, givenFacts, HOMES, homeColumns } from '../../reports/building/homes-sheet.js'
import { layOutBuilding } from '../../reports/building/write-building.js'
import { fileOfLink } from '../../reports/workbook/file-link.js'
import { linksOfCells } from './links-of-cells.js'
import { type MadeOfTests, numberAt, type PartOf, textAt } from './made-of-tests.js'

/** A building of several homes: a row of sheet Homes for each. */
export const buildingAgain: MadeOfTests = {
  words: 'building',
  copied: { sheet: HOMES, first: FIRST_HOME, columns: homeColumns.file - 1 },
  parts: partsOf,
  layOut: (grid, homes): Workbook => {
    const building = grid.sheet(BUILDING)
    const { name, rule } = statedIn
    const stated = buildingRules.find((one) => ruleWords[one] === textAt(building, rule.row, rule.column))
    const facts = factsOf(grid)
    return layOutBuilding({
      name: textAt(building, name.row, name.column),
      homes,
      // Where nobody asked for a rule, a note says which is used instead.
      ...(stated !== undefined && !followsFromTarget(grid) && { rule: stated }),
      ...facts,
      ...(homes.length > (facts.homesInBuilding ?? 0) && { homesInBuilding: homes.length }),
    })
  },
}

function partsOf(grid: Grid, bytes: Uint8Array): PartOf[] {
  const sheet = grid.sheet(HOMES)
  const links = linksOfCells(archivedParts(bytes), HOMES)
  const parts: PartOf[] = []
  for (let row = FIRST_HOME; row <= (sheet?.rows ?? 0); row += 1) {
    const file = textAt(sheet, row, homeColumns.file)
    const plot = textAt(sheet, row, homeColumns.name)
    if (file === '' && plot === '') continue
    const link = links.get(`${row}|${homeColumns.file}`)
    const given = link === undefined ? undefined : fileOfLink(link)
    parts.push({
      row,
      file,
      plot,
      date: textAt(sheet, row, homeColumns.date),
      // A link to another file than the one named is a difference of its own.
      ...(given?.endsWith(file) && { given }),
    })
  }
  return parts
}

/** What was entered for the building, by the labels above its homes. */
function factsOf(grid: Grid): Partial<Record<keyof typeof givenFacts, number>> {
  const sheet = grid.sheet(HOMES)
  const facts: Partial<Record<keyof typeof givenFacts, number>> = {}
  for (let row = FACTS.first; row < FIRST_HOME; row += 1)
    for (const [key, label] of Object.entries(givenFacts) as [keyof typeof givenFacts, string][]) {
      const value = numberAt(sheet, row, FACTS.value)
      if (textAt(sheet, row, FACTS.label) === label && value !== undefined) facts[key] = value
    }
  return facts
}

function followsFromTarget(grid: Grid): boolean {
  const sheet = grid.sheet(BUILDING)
  const said = ['homes-rule/of-target', 'homes-rule/none'] as const
  const texts = said.map((rule) => homesText(rule).message)
  for (let row = 1; row <= (sheet?.rows ?? 0); row += 1)
    if (texts.some((text) => textAt(sheet, row, 1).includes(text))) return true
  return false
}
