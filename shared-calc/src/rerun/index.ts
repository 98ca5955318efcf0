export { shortNames } from '../catalogue/short-names.js'
export { versions } from '../versions/list.js'
export { type KnownVersion, type RunnableVersion, runnable, type VersionParts } from '../versions/version.js'
export * from './report.js'
export { bad as badOutcomes } from './report.js'
export { rerunFile } from './rerun.js'
export type { RerunOptions } from './rerun-options.js'
export {
  foundDifference,
  makeRerunReport,
  RERUN_FORMAT,
  type RerunReport,
} from './rerun-report.js'
export { signatureWords } from './signature-state.js'
export { signatureVerifier } from './signature-verifier.js'
export { writeRerunWorkbook } from './workbook/write-rerun.js'
