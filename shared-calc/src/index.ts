export { InputError, type Problem, problemLine } from './problem.js'
export * from './record/index.js'
