import type { OpeningKind, TestDetails } from '../../contract/record/index.js'
import type { Opening } from '../../contract/record/test-details.js'
import type { Source } from '../../engine/index.js'

export type PreparationMethod = NonNullable<TestDetails['preparation']>
export type State = Opening['state']

/** What a preparation method asks of one kind of opening. */
export interface Asked {
  /** States that agree with the method; `not present` always does. */
  readonly states: readonly State[]
  readonly words: string
}

/** Openings of ISO 9972:2015 methods 1 and 2 are in its table 1; the others are trade practice. */
const table: Source = { text: 'ISO 9972:2015, 5.2 and table 1', seen: 'memory' }
const practice: Source = { text: 'common practice, no source', seen: 'common practice' }

const asked = (states: readonly State[], words: string): Asked => ({ states, words })

const closed = asked(['closed'], 'closed')
const sealed = asked(['sealed'], 'sealed')
const filled = asked(['filled', 'sealed'], 'filled with water, or sealed')

export interface ListedOpening {
  readonly kind: OpeningKind
  readonly asks: Readonly<Record<'method 1' | 'method 2', Asked>>
  readonly source: Source
}

const both = (kind: OpeningKind, one: Asked, source = table): ListedOpening => ({
  kind,
  asks: { 'method 1': one, 'method 2': one },
  source,
})

/** The preparation list: method 1 tests the building in use, method 2 its envelope. Method 3 asks what its purpose asks. */
export const preparationList: readonly ListedOpening[] = [
  both('external windows', closed),
  both('external doors and hatches', closed),
  both('internal doors', asked(['open'], 'open, so that the pressure is the same everywhere')),
  { kind: 'natural ventilation openings', asks: { 'method 1': closed, 'method 2': sealed }, source: table },
  both('whole-building ventilation', sealed),
  {
    kind: 'intermittent extract',
    asks: { 'method 1': asked(['closed', 'off'], 'off and closed'), 'method 2': sealed },
    source: table,
  },
  {
    kind: 'cooker hood',
    asks: { 'method 1': asked(['closed', 'off'], 'off and closed'), 'method 2': sealed },
    source: table,
  },
  both('drain traps', filled, practice),
  {
    kind: 'flues and fireplaces',
    asks: {
      'method 1': asked(['closed'], 'cold, ash removed, damper closed'),
      'method 2': asked(['sealed', 'closed'], 'cold, ash removed, sealed'),
    },
    source: practice,
  },
  {
    kind: 'letter boxes and keyholes',
    asks: {
      'method 1': asked(['closed', 'open'], 'left as in use'),
      'method 2': asked(['sealed', 'closed'], 'sealed, or closed'),
    },
    source: table,
  },
  {
    kind: 'service entries',
    asks: {
      'method 1': asked(['closed', 'open'], 'left as in use'),
      'method 2': asked(['sealed', 'closed', 'open'], 'left as built, with intended openings sealed'),
    },
    source: practice,
  },
  both('loft hatch', closed, practice),
]

/** What a method asks of an opening; undefined for method 3, which asks what its purpose asks. */
export const askedOf = ({ asks }: ListedOpening, method: PreparationMethod | undefined): Asked | undefined =>
  method === 'method 1' || method === 'method 2' ? asks[method] : undefined
