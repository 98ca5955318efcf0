import type { TestLine } from '@draughtbook/shared-calc/register'
import { seeded } from '../archive/seeded'

const CLIENTS = ['Sample Builder (invented)', 'Example Homes (invented)', 'Third Client (invented)']

/** What the tests of one house come to, counted by hand for its kind. */
export interface Truth {
  readonly rows: number
  readonly firsts?: number
  readonly repeats?: number
  readonly unpaired?: number
  readonly earlierIssues?: number
  readonly duplicates?: number
  readonly altered?: number
  readonly superseded?: number
  readonly billable: number
  readonly firstJudged?: number
  readonly firstMet?: number
  readonly retestHere?: number
  readonly retestElsewhere?: number
  readonly invalid?: number
  readonly noTarget?: number
}

interface Wish {
  readonly day?: string
  readonly stage?: string
  readonly n50?: number
  readonly outcome?: TestLine['outcome']
  readonly id?: string
  readonly file?: string
  readonly readings?: string
  readonly record?: string
  readonly altered?: string
}

type Kind = readonly [tests: readonly Wish[], truth: Truth]

const PASS = 0.5
const MISS = 0.8
const retest = (day: string, n50: number, id = 'b'): Wish => ({ stage: 'retest', day, n50, id, file: id })

/** Kinds of house in the register of October; n50 is judged by a limit of 0.6. */
const kinds: readonly Kind[] = [
  [[{ n50: PASS }], { rows: 1, firsts: 1, billable: 1, firstJudged: 1, firstMet: 1 }],
  [[{ n50: MISS }], { rows: 1, firsts: 1, billable: 1, firstJudged: 1, retestHere: 1 }],
  [
    [{ n50: MISS }, retest('2026-10-20', PASS)],
    { rows: 2, firsts: 1, repeats: 1, superseded: 1, billable: 2, firstJudged: 1 },
  ],
  [
    [{ n50: MISS }, retest('2026-10-20', MISS)],
    { rows: 2, firsts: 1, repeats: 1, superseded: 1, billable: 2, firstJudged: 1, retestHere: 1 },
  ],
  [[retest('2026-10-20', PASS)], { rows: 1, unpaired: 1, billable: 1 }],
  // Not valid, then repeated at the same stage: the invalid one is not billed.
  [
    [
      { n50: PASS, outcome: 'not valid' },
      { n50: PASS, day: '2026-10-12', id: 'b', file: 'b' },
    ],
    { rows: 2, firsts: 1, repeats: 1, superseded: 1, billable: 1, firstJudged: 1 },
  ],
  [
    [{ n50: PASS, outcome: 'not valid' }],
    { rows: 1, firsts: 1, billable: 0, firstJudged: 1, retestHere: 1, invalid: 1 },
  ],
  [
    [{ n50: PASS }, { n50: PASS, file: 'copy' }],
    { rows: 2, firsts: 1, duplicates: 1, billable: 1, firstJudged: 1, firstMet: 1 },
  ],
  // Issued again with another address, say: same number, date and readings.
  [
    [{ n50: MISS }, { n50: MISS, file: 'a-reissued', record: 'again' }],
    { rows: 2, firsts: 1, earlierIssues: 1, billable: 1, firstJudged: 1, retestHere: 1 },
  ],
  // The same number on another test is no reissue.
  [
    [{ n50: MISS }, { n50: PASS, day: '2026-10-21', file: 'b', record: 'b', readings: 'b' }],
    { rows: 2, firsts: 1, repeats: 1, superseded: 1, billable: 2, firstJudged: 1 },
  ],
  [[{ outcome: 'no target' }], { rows: 1, firsts: 1, billable: 1, noTarget: 1 }],
  // An altered retest is no proof: the plot is still to be retested.
  [
    [{ n50: MISS }, { ...retest('2026-10-20', PASS), altered: 'the evaluation was changed after issue' }],
    { rows: 2, firsts: 1, altered: 1, billable: 1, firstJudged: 1, retestHere: 1 },
  ],
  // An altered copy beside the untouched summary, before it in the order of files.
  [
    [
      { n50: PASS, file: 'z' },
      { n50: PASS, file: '0', altered: '1 cells were edited after issue (sheet Check)' },
    ],
    { rows: 2, firsts: 1, altered: 1, billable: 1, firstJudged: 1, firstMet: 1 },
  ],
  // Missed in September: retested in October, in November, or never.
  [[{ n50: MISS, day: '2026-09-10' }, retest('2026-10-20', PASS)], { rows: 1, repeats: 1, billable: 1 }],
  [[{ n50: MISS, day: '2026-09-10' }, retest('2026-11-02', PASS)], { rows: 0, billable: 0 }],
  [[{ n50: MISS, day: '2026-09-10' }], { rows: 0, billable: 0, retestElsewhere: 1 }],
  // Two stages: each has a first test, and the last one says how the plot is.
  [
    [
      { n50: PASS, stage: 'fabric' },
      { n50: MISS, day: '2026-10-20', id: 'b', file: 'b' },
    ],
    { rows: 2, firsts: 2, billable: 2, firstJudged: 2, firstMet: 1, retestHere: 1 },
  ],
  [
    [{ n50: MISS }, retest('2026-10-20', MISS), retest('2026-10-25', PASS, 'c')],
    { rows: 3, firsts: 1, repeats: 2, superseded: 2, billable: 3, firstJudged: 1 },
  ],
  // Issued three times, then retested.
  [
    [
      { n50: MISS },
      { n50: MISS, file: 'a-2', record: '2' },
      { n50: MISS, file: 'a-3', record: '3' },
      retest('2026-10-20', PASS),
    ],
    { rows: 4, firsts: 1, repeats: 1, earlierIssues: 2, superseded: 1, billable: 2, firstJudged: 1 },
  ],
  // A retest that is not valid proves nothing, and is not billed.
  [
    [{ n50: MISS }, { ...retest('2026-10-20', PASS), outcome: 'not valid' }],
    {
      rows: 2,
      firsts: 1,
      repeats: 1,
      superseded: 1,
      billable: 1,
      firstJudged: 1,
      retestHere: 1,
      invalid: 1,
    },
  ],
  [[retest('2026-10-20', MISS)], { rows: 1, unpaired: 1, billable: 1, retestHere: 1 }],
  [[{ n50: MISS, day: '2026-11-03' }], { rows: 0, billable: 0, retestElsewhere: 1 }],
  [[{ n50: PASS, day: '2026-09-03' }], { rows: 0, billable: 0 }],
  // Missed in October, retested in November: seen though November is not in the register.
  [[{ n50: MISS }, retest('2026-11-02', PASS)], { rows: 1, firsts: 1, billable: 1, firstJudged: 1 }],
]

export interface InventedHouse {
  readonly client?: string
  readonly lines: readonly TestLine[]
  readonly truth: Truth
}

/** Invented houses, each of the next kind; every fifth has no client, every seventh no site. */
export const inventedHouses = (count: number): InventedHouse[] =>
  Array.from({ length: count }, (_, house) =>
    houseOf(house, kinds[house % kinds.length] as Kind, house % 5 === 4 ? undefined : CLIENTS[house % 3]),
  )

/** Houses of kinds and clients drawn at random, until the register of October has at least so many rows. */
export function randomHouses(seed: number, rows: number): InventedHouse[] {
  const random = seeded(seed)
  const houses: InventedHouse[] = []
  for (let sum = 0; sum < rows; sum += houses.at(-1)?.truth.rows ?? 0) {
    const kind = kinds[Math.floor(random() * kinds.length)] as Kind
    // Plots are numbered with gaps.
    const number = (houses.length + 1) * 3 + Math.floor(random() * 3)
    houses.push(houseOf(number, kind, [...CLIENTS, undefined][Math.floor(random() * 4)]))
  }
  return houses
}

function houseOf(house: number, [tests, truth]: Kind, client: string | undefined): InventedHouse {
  const lines = tests.map((wish) => lineFor(house, client, wish))
  return { ...(client !== undefined && { client }), lines, truth }
}

function lineFor(house: number, client: string | undefined, wish: Wish): TestLine {
  const { day = '2026-10-05', stage = 'acceptance', n50 = 0.55, id = 'a', file = 'a' } = wish
  const outcome = wish.outcome ?? (n50 <= 0.6 ? 'meets' : 'misses')
  // Records and readings differ from test to test unless wished otherwise; hexadecimal as digests are.
  const digest = (text: string) => Buffer.from(`${house}|${text}`).toString('hex').padEnd(64, '0')
  const value = n50 + (house % 50) / 1000
  return {
    file: `archive/${house}/${file}.xlsx`,
    source: 'summary workbook',
    building: `Plot ${house}`,
    ...(house % 7 !== 6 && { site: `Invented Site ${house % 4}` }),
    ...(client !== undefined && { client }),
    stage,
    date: day,
    testNumber: `T-${house}-${id}`,
    recordDigest: digest(
      wish.record ?? `record ${id} ${wish.altered === undefined || file === '0' ? '' : 'x'}`,
    ),
    readingsDigest: digest(wish.readings ?? `readings ${id}`),
    calculationVersion: '1.0.0',
    results: { n50: value, q50: 100 * value, q4: 20 * value, ela4: 50 * value },
    ...(outcome !== 'no target' && {
      judged: { quantity: 'n50', label: 'invented', value, limit: 0.6, unit: '1/h', margin: 0.6 - value },
    }),
    outcome,
    findings:
      outcome === 'not valid'
        ? [{ rule: 'invented', severity: 'invalidates', message: 'invented finding' }]
        : [],
    gauge: {},
    device: {},
    curves: [],
    ...(wish.altered !== undefined && { altered: wish.altered }),
  }
}
