// What a calculation version is made of: freeze-version.mjs bundles this file.
export { evaluateWorked } from '../evaluate.js'
export { layOutSummary } from '../workbook/write-summary.js'
