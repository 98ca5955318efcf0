export { versions } from './list.js'
export {
  type KnownVersion,
  type RunnableVersion,
  runnable,
  type StoredVersion,
  type VersionParts,
} from './version.js'
