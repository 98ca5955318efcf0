import type { TestWithSite } from '../site/test-with-site.js'
import type { WorkedUncertainty } from '../uncertainty/worked-uncertainty.js'

/** A whole test worked out, with site part and uncertainty budget where it has them. */
export interface AssessedTest extends TestWithSite {
  /** Only where asked for, or where the record has an uncertainty part. */
  readonly uncertainty?: WorkedUncertainty
}
