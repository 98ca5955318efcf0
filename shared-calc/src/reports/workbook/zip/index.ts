export { type Parts, readParts, setText, textOf, writeParts } from './parts.js'
export { rezip } from './rezip.js'
