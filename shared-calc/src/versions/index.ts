export { versions } from './list.js'
export type { RunnableVersion, VersionParts } from './version.js'
