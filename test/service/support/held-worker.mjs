// A worker's entry for tests: does nothing until a file is there, then what it is asked for.
import './held-threads.mjs'

export { default } from '../../../service/dist/bundle/worker.js'
