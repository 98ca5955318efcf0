import type { Direction, HouseWish } from './house.js'
import { METRIC, type Unit, type Units } from './units.js'
import { WORDS, type Wording, type Words } from './words/index.js'

/** Where a log says its units. */
export type UnitPlace =
  | 'brackets'
  | 'square'
  | 'comma'
  | 'slash'
  | 'beside'
  | 'row'
  | 'title'
  | 'format'
  | 'stuck'
  | 'alone'
  | 'nowhere'

export type Column =
  | 'number'
  | 'time'
  | 'target'
  | 'pressure'
  | 'flow'
  | 'flowOther'
  | 'device'
  | 'plate'
  | 'fanSpeed'
  | 'corrected'
  | 'induced'
  | 'fan1'
  | 'fan2'
  | 'total'
  | 'remark'

export type Dirt =
  | 'average row'
  | 'highest row'
  | 'total row'
  | 'blank rows'
  | 'repeat note instead of a flow'
  | 'note after a flow'
  | 'struck-out reading'
  | 'greyed reading not used'
  | 'greyed reading'
  | 'numbers as text'
  | 'notes'
  | 'leaks below'
  | 'rooms beside'
  | 'openings below'
  | 'n50 in the title'
  | 'letterhead'
  | 'wide gap'
  | 'title page'
  | 'merged headings'
  | 'old job hidden'
  | 'results'
  | 'wrong results'
  | 'gross volume too'
  | 'junk lines'
  | 'formulas'
  | 'rooms on a sheet'
  | 'temperatures in one cell'

export type ZeroFlow =
  /** One label a value. */
  | 'labels'
  /** "Zero flow" with before and after as headings of two cells. */
  | 'two cells'
  /** Lists in columns of the readings' table. */
  | 'columns'
  /** Lists across, one line each. */
  | 'lines'
  /** First and last row of the readings' table, with flow 0. */
  | 'in the table'
  /** All lists on a sheet of their own. */
  | 'other sheet'

export type Structure =
  | 'beside'
  | 'below'
  | 'sheets'
  | 'test rows'
  | 'reading rows'
  | 'across'
  | 'one table'
  | 'pairs'
  | 'gauge text'
  | 'series'

/** A thing the log cannot tell, so that it must be asked or, where only likely, may be. */
export type Ask =
  | 'volume'
  | 'volume unit'
  | 'flow unit'
  | 'pressure unit'
  | 'temperatures'
  | 'barometer unit'
  | 'date'
  | 'which test'
  | 'which volume'
  | 'which pressure'
  | 'which flow'
  | 'sign'
  | 'zero flow'
  | 'direction'
  | 'device'
  | 'readings'

export interface Recipe {
  name: string
  words: Words
  units: Units
  structure: Structure
  fieldUnits: UnitPlace
  tableUnits: UnitPlace
  zeroFlow: ZeroFlow
  table: readonly Column[]
  dirt: readonly Dirt[]
  house: HouseWish
  /** Several tests in one file: other houses, or the same again after sealing. */
  tests: 'one' | 'houses' | 'houses on sheets' | 'retest' | 'houses, others filtered out'
  /** How the day is written. */
  date: 'date' | 'text' | 'long text' | 'two-figure year' | 'day or month first'
  file: 'xlsx' | 'semicolon' | 'comma' | 'tab'
  /** Depressurisation logged without its minus. */
  noMinus: boolean
  /** Pressures logged without the zero-flow pressure already. */
  induced: boolean
  /** Flows in another unit beside, for `flowOther`. */
  otherFlow?: Unit
  /** What stands in the heading instead of the unit's usual symbol. */
  flowSymbol?: string
  missing: readonly ('volume' | 'temperatures' | 'barometer' | 'name' | 'date')[]
  /** Cannot be told from the file by anybody: right without a question would be luck. */
  mustAsk: readonly Ask[]
  /** A careful colleague might ask as well. */
  mayAsk: readonly Ask[]
  /** Words of which one must stand in a finding or a question. */
  mustSay: readonly RegExp[]
}

export interface RecipeWish extends Partial<Omit<Recipe, 'name' | 'words' | 'units'>> {
  words?: Wording
  units?: Partial<Units>
}

/** A log as ordinary as it comes, but for what is wished. */
export function recipe(name: string, { words = 'form', units = {}, ...wish }: RecipeWish = {}): Recipe {
  return {
    structure: 'beside',
    fieldUnits: 'brackets',
    tableUnits: 'brackets',
    zeroFlow: 'labels',
    table: ['number', 'pressure', 'flow'],
    dirt: [],
    house: {},
    tests: 'one',
    date: 'date',
    file: 'xlsx',
    noMinus: false,
    induced: false,
    missing: [],
    mustAsk: [],
    mayAsk: [],
    mustSay: [],
    ...wish,
    name,
    words: WORDS[words],
    units: { ...METRIC, ...units },
  }
}

export const directionWord = ({ words }: Recipe, direction: Direction): string => words[direction]
