import { buildingRules, ruleWords } from '../assessment/building/work-building.js'
import { siteStages } from '../assessment/stages/work-stages.js'
import { homesText, stageReasons } from '../catalogue/findings/several-homes.js'
import { BUILDING, statedIn } from '../reports/building/building-sheet.js'
import { FACTS, FIRST_HOME, givenFacts, HOMES, homeColumns } from '../reports/building/homes-sheet.js'
import { layOutBuilding } from '../reports/building/write-building.js'
import {
  ALLOWANCE,
  ALLOWANCE_HEAD,
  CONFIDENCE,
  columns,
  SHARES,
  shareColumn,
} from '../reports/stages/allowance-sheet.js'
import { NOT_USED, SITE } from '../reports/stages/site-sheet.js'
import { layOutStages } from '../reports/stages/write-stages.js'
import { holdTexts } from '../reports/workbook/held-texts.js'
import { workbookParts } from '../reports/workbook/zip/workbook-parts.js'

/** How a version writes a building of several homes, and where its sheets say what was entered for it. */
export const building = {
  layOut: layOutBuilding,
  sheet: BUILDING,
  statedIn,
  rules: buildingRules,
  ruleWords,
  /** Notes on a rule that nobody asked for. */
  ruleFollows: [homesText('homes-rule/of-target').message, homesText('homes-rule/none').message],
  homes: { sheet: HOMES, first: FIRST_HOME, columns: homeColumns, facts: FACTS, given: givenFacts },
} as const

/** The same for the stages of a site. */
export const stages = {
  layOut: layOutStages,
  sheet: SITE,
  notUsed: NOT_USED,
  repeated: stageReasons.repeated,
  stages: siteStages,
  allowance: { sheet: ALLOWANCE, first: ALLOWANCE_HEAD + 1, columns, shares: SHARES, confidence: CONFIDENCE },
  shareColumn,
} as const

/** The parts of a workbook of several tests, still without charts. */
export const packReport: typeof workbookParts = async (workbook) => {
  holdTexts(workbook)
  return workbookParts(workbook)
}
