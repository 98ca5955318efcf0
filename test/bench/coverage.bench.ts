import { mkdirSync, renameSync, writeFileSync } from 'node:fs'
import {
  coverageOf,
  type Directions,
  directions,
  drawCell,
  type Quantity,
  quantities,
  type Stated,
} from './coverage.js'
import { type CoverageCell, coveragePicture } from './coverage-picture.js'
import { heldBack, known } from './houses/house.js'
import { precise, usual } from './houses/instruments.js'
import type { Weather } from './houses/simulated-test.js'
import { reliabilityOf } from './reliability.js'
import { type ReliabilityCurve, reliabilityPicture } from './reliability-picture.js'

const TESTS = Number(process.env.TESTS ?? 1000)
const PICTURES = `${import.meta.dirname}/../../bench/pictures`

const families = { known, 'held back': heldBack }
const instruments = { precise, usual }
const weathers: readonly (Weather & { readonly name: string })[] = [
  { name: '0 m/s', wind_m_s: 0 },
  { name: '0 m/s, cold', wind_m_s: 0, cold: true },
  { name: '2 m/s', wind_m_s: 2 },
  { name: '4 m/s', wind_m_s: 4 },
  { name: '6 m/s', wind_m_s: 6 },
]

interface Cell {
  readonly family: string
  readonly instruments: string
  readonly weather: string
  readonly stated: readonly Stated[]
}

/** How often the stated 95 % intervals hold the truth of simulated houses, and stated probabilities come true. */
export function run(): void {
  console.log(
    `\nShare of ${TESTS} simulated tests a cell whose stated 95 % interval holds the truth (goal 93 to 97 %, 90 % for ELA at 6 m/s)`,
  )
  const columns = quantities.flatMap((quantity) => directions.map((which) => `${quantity}, ${which}`))
  console.log(
    `  ${'houses, instruments, wind'.padEnd(34)}${columns.map((name) => name.padStart(12)).join('')}`,
  )
  const cells = Object.entries(families).flatMap(([family, draw], f) =>
    Object.entries(instruments).flatMap(([name, set], i) =>
      weathers.map((weather, w): Cell => {
        const { stated, useless } = drawCell(draw, weather, set, TESTS, 1000 * f + 100 * i + w + 1)
        const cell = { family, instruments: name, weather: weather.name, stated }
        const shares = quantities.flatMap((quantity) =>
          directions.map((which) => percent(coverageOf(of(stated, quantity, which))).padStart(12)),
        )
        const label = `${family}, ${name}, ${weather.name}`
        const lost = useless === 0 ? '' : `   (${useless} of ${2 * TESTS} could not be evaluated)`
        console.log(`  ${label.padEnd(34)}${shares.join('')}${lost}`)
        return cell
      }),
    ),
  )
  const upTo4 = curvesOf(cells.filter(({ weather }) => weather !== STRONG))
  printReliability('wind up to 4 m/s; goal: within 3 points up to 99 %', upTo4)
  printReliability('wind of 6 m/s', curvesOf(cells.filter(({ weather }) => weather === STRONG)))
  printReliability('all', curvesOf(cells))
  const shown = cells.map(
    ({ stated, ...cell }): CoverageCell => ({
      ...cell,
      shares: quantities.flatMap((quantity) =>
        directions.map((which) => ({
          quantity,
          directions: which,
          share: coverageOf(of(stated, quantity, which)),
        })),
      ),
    }),
  )
  mkdirSync(PICTURES, { recursive: true })
  write('coverage.svg', coveragePicture(shown, TESTS))
  write('reliability.svg', reliabilityPicture(curvesOf(cells)))
  console.log('  drawn in test/bench/pictures: coverage.svg, reliability.svg')
}

const STRONG = '6 m/s'

const curvesOf = (cells: readonly Cell[]): ReliabilityCurve[] =>
  Object.keys(families).flatMap((family) =>
    quantities.map((quantity): ReliabilityCurve => {
      const stated = cells.filter((cell) => cell.family === family).flatMap((cell) => cell.stated)
      return {
        family,
        quantity,
        points: reliabilityOf(stated.filter((one) => one.quantity === quantity)),
      }
    }),
  )

const of = (stated: readonly Stated[], quantity: Quantity, which: Directions): readonly Stated[] =>
  stated.filter((one) => one.quantity === quantity && one.directions === which)

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`

function printReliability(which: string, curves: readonly ReliabilityCurve[]): void {
  console.log(`\nStated probability that a target is met, and how often it was (${which})`)
  const heads = curves.map(({ family, quantity }) => `${quantity}, ${family}`.padStart(22))
  console.log(`  ${'stated from'.padEnd(12)}${heads.join('')}`)
  for (const [i, { from }] of (curves[0]?.points ?? []).entries()) {
    const pairs = curves.map(({ points }) => {
      const point = points[i]
      return point ? `${percent(point.stated)} → ${percent(point.met)}`.padStart(22) : ''
    })
    console.log(`  ${percent(from).padEnd(12)}${pairs.join('')}`)
  }
}

function write(name: string, text: string): void {
  const path = `${PICTURES}/${name}`
  writeFileSync(`${path}.new`, text)
  renameSync(`${path}.new`, path)
}
