// What a calculation version is made of: freeze-version.mjs bundles this file.
export { evaluateWorked } from '../assessment/evaluate.js'
export { packSummary } from '../reports/workbook/issued/pack-summary.js'
export { layOutSummary } from '../reports/workbook/write-summary.js'
export * as several from './several.js'
