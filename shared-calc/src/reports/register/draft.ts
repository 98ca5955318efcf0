import type { TestClass } from './test-classes.js'
import type { TestLine } from './test-line.js'

/** A test on its way to its place in the register. */
export interface Draft {
  readonly line: TestLine
  role: TestClass
  /** A further copy of a test. */
  aside?: true
  latest?: true
  of?: Draft
  supersededBy?: Draft
  remark?: string
}
