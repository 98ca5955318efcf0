import type { Workbook } from 'exceljs'
import { addressOf } from '../../log/grid/address.js'
import type { Grid } from '../../log/grid/grid.js'
import { fileOfLink } from '../../reports/workbook/file-link.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import type { SeveralParts } from '../../versions/version.js'
import { asInCells, type Entered } from './entered.js'
import { linksOfCells } from './links-of-cells.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'
import { textAt } from './sheet-content.js'

type Written = SeveralParts['building']
type Given = Written['homes']['given']

/** A building of several homes as a version writes it: a row of sheet Homes for each. */
export const buildingAgain = (written: Written): MadeOfTests => ({
  words: 'building',
  copied: {
    sheet: written.homes.sheet,
    first: written.homes.first,
    columns: written.homes.columns.file - 1,
    file: written.homes.columns.file,
  },
  parts: (grid, parts) => partsOf(written, grid, parts),
  layOut: (grid, homes, entered): Workbook => {
    const { rules, ruleWords, statedIn } = written
    const sheet = grid.sheet(written.sheet)
    const { name, rule } = statedIn
    const { guess } = entered
    const stated =
      rules.find((one) => one === guess?.rule) ??
      rules.find((one) => ruleWords[one] === textAt(sheet, rule.row, rule.column))
    const facts = {
      ...factsOf(written, grid, entered),
      ...(guess?.homesInBuilding !== undefined && { homesInBuilding: guess.homesInBuilding }),
    }
    return written.layOut({
      name: entered.name(written.sheet, name.row, name.column),
      homes,
      // Where nobody asked for a rule, a note says which is used instead.
      ...(stated !== undefined && !followsFromTarget(written, grid) && { rule: stated }),
      ...facts,
      ...(homes.length > (facts.homesInBuilding ?? 0) && { homesInBuilding: homes.length }),
    })
  },
  guesses: (grid) => {
    const { row, column } = written.statedIn.rule
    // The next line says "2 of 20 homes".
    const homes = /of (\d{1,6}) /.exec(textAt(grid.sheet(written.sheet), row + 1, column))?.[1]
    return [
      ...(homes === undefined ? [] : [{ homesInBuilding: Number(homes) }]),
      ...written.rules.map((rule) => ({ rule })),
    ]
  },
  entered: (grid) => {
    const { name, rule } = written.statedIn
    const { sheet, first, facts, given } = written.homes
    const cell = (row: number, column: number) => addressOf(row - 1, column - 1)
    const found = factsOf(written, grid, asInCells(grid))
    const rows = Array.from({ length: first - facts.first }, (_, i) => facts.first + i)
    return [
      `name (${written.sheet}!${cell(name.row, name.column)})`,
      `rule (${written.sheet}!${cell(rule.row, rule.column)})`,
      ...rows.flatMap((row) => {
        const label = textAt(grid.sheet(sheet), row, facts.label)
        const key = (Object.keys(given) as (keyof Given)[]).find((one) => given[one] === label)
        return key === undefined || found[key] === undefined
          ? []
          : [`${label}: ${found[key]} (${sheet}!${cell(row, facts.value)})`]
      }),
    ]
  },
})

function partsOf({ homes }: Written, grid: Grid, inFile: Parts): PartOf[] {
  const sheet = grid.sheet(homes.sheet)
  const links = linksOfCells(inFile, homes.sheet)
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
function factsOf({ homes }: Written, grid: Grid, entered: Entered): Partial<Record<keyof Given, number>> {
  const sheet = grid.sheet(homes.sheet)
  const found: Partial<Record<keyof Given, number>> = {}
  for (let row = homes.facts.first; row < homes.first; row += 1)
    for (const [key, label] of Object.entries(homes.given) as [keyof Given, string][]) {
      const value = entered.number(homes.sheet, row, homes.facts.value)
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
