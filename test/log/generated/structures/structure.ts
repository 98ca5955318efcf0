import type { Random } from '../random.js'
import type { Recipe } from '../recipe.js'
import type { TestTruth } from '../truth/of-test.js'
import type { Sheet } from '../write/sheet.js'
import type { WrittenTest } from '../written.js'

export interface KnownTest {
  written: WrittenTest
  truth: TestTruth
}

/** Lays tests out as one kind of log keeps them. */
export type Layer = (tests: readonly KnownTest[], recipe: Recipe, random: Random) => Sheet[]
