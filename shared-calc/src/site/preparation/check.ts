import type { Opening, OpeningKind, TestRecord } from '../../contract/record/index.js'
import { sourceText } from '../../engine/index.js'
import { askedOf, preparationList, type State } from './asks.js'

/** One line of the preparation list beside what the record says. */
export interface CheckedOpening {
  readonly kind: OpeningKind
  readonly asked: string
  readonly source: string
  /** Openings of this kind in the record, with their place in `test.openings`. */
  readonly found: readonly { readonly opening: Opening; readonly index: number; readonly agrees: boolean }[]
}

/** The preparation list of a record: what the method asks, what was logged, and whether they agree. */
export function checkPreparation({ test }: Pick<TestRecord, 'test'>): CheckedOpening[] {
  const openings = (test.openings ?? []).map((opening, index) => ({ opening, index }))
  return preparationList.map((listed) => {
    const asked = askedOf(listed, test.preparation)
    const agrees = (state: State) => !asked || state === 'not present' || asked.states.includes(state)
    return {
      kind: listed.kind,
      asked: asked?.words ?? 'choose a preparation method first',
      source: asked ? sourceText(listed.source) : 'ISO 9972:2015, method 3 (value from memory)',
      found: openings
        .filter(({ opening }) => kindOf(opening) === listed.kind)
        .map(({ opening, index }) => ({ opening, index, agrees: agrees(opening.state) })),
    }
  })
}

/** The kind as recorded, or as the name of the opening says word for word. */
function kindOf({ kind, opening }: Opening): OpeningKind | undefined {
  if (kind !== undefined) return kind
  const name = opening.trim().toLowerCase()
  return preparationList.find((listed) => listed.kind === name)?.kind
}
