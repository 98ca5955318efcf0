export type { RerunOptions } from './options.js'
export * from './report.js'
export { rerunFile } from './rerun.js'
