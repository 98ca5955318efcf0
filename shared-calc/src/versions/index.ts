export { versions } from './list.js'
export type { RunnableVersion } from './version.js'
