export { sizeWords } from './size-words.js'
export { type WorkedLeaks, workLeaks } from './work-leaks.js'
