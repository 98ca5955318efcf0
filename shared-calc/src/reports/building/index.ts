export { ruleWords } from './building-sheet.js'
export { writeBuildingWorkbook } from './write-building.js'
