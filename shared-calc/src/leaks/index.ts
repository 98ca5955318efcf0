export { type Hole, LEAK_REPORT_FORMAT, LeakReport, leakReport, reportLeaks } from './report.js'
export { sizeWords } from './size-words.js'
export { type WorkedLeaks, workLeaks } from './work-leaks.js'
