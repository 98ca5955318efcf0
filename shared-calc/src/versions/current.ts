// What a calculation version is made of: freeze-version.mjs bundles this file.
export { evaluateWorked } from '../assessment/evaluate.js'
export { layOutSummary } from '../reports/workbook/write-summary.js'
