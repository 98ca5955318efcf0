export { writeStagesWorkbook } from './write-stages.js'
