import type { Directions, Quantity } from './coverage.js'

export interface CoverageCell {
  readonly family: string
  readonly instruments: string
  readonly weather: string
  readonly shares: readonly {
    readonly quantity: Quantity
    readonly directions: Directions
    readonly share: number
  }[]
}

const panel = { width: 400, height: 210, gapX: 60, gapY: 70, left: 60, top: 90 }
const LOWEST = 0.85
const styles = [
  { family: 'known', directions: 'both', fill: '#1f5f8b', stroke: '#1f5f8b' },
  { family: 'known', directions: 'one', fill: 'white', stroke: '#1f5f8b' },
  { family: 'held back', directions: 'both', fill: '#b5541c', stroke: '#b5541c' },
  { family: 'held back', directions: 'one', fill: 'white', stroke: '#b5541c' },
] as const
const titles: Readonly<Record<Quantity, string>> = { q50: 'flow at 50 Pa', ela4: 'ELA at 4 Pa' }

/** Coverage of the stated 95 % intervals, one panel for each figure and set of instruments, as an SVG picture. */
export function coveragePicture(cells: readonly CoverageCell[], tests: number): string {
  const weathers = [...new Set(cells.map(({ weather }) => weather))]
  const instruments = [...new Set(cells.map((cell) => cell.instruments))]
  const panels = (['q50', 'ela4'] as const).flatMap((quantity, row) =>
    instruments.map((name, column) => {
      const left = panel.left + column * (panel.width + panel.gapX)
      const top = panel.top + row * (panel.height + panel.gapY)
      return onePanel(cells, weathers, quantity, name, left, top)
    }),
  )
  const keys = styles.map(
    ({ family, directions, fill, stroke }, i) =>
      `<circle cx="${panel.left + 6 + i * 215}" cy="48" r="5" fill="${fill}" stroke="${stroke}" stroke-width="2"/><text x="${panel.left + 17 + i * 215}" y="52">${family} houses, ${directions === 'both' ? 'both directions' : 'one direction'}</text>`,
  )
  const width = panel.left + 2 * panel.width + panel.gapX + 20
  const height = panel.top + 2 * panel.height + panel.gapY + 50
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12" role="img" aria-labelledby="title"><title id="title">How often the stated 95 % interval holds the truth</title><rect width="100%" height="100%" fill="white"/><text x="${panel.left}" y="24" font-size="15" font-weight="bold">How often the stated 95 % interval holds the truth: ${tests} simulated tests a point; band 93 to 97 %</text>${keys.join('')}${panels.join('')}</svg>\n`
}

function onePanel(
  cells: readonly CoverageCell[],
  weathers: readonly string[],
  quantity: Quantity,
  instruments: string,
  left: number,
  top: number,
): string {
  const y = (share: number) =>
    Number((top + (panel.height * (1 - Math.max(share, LOWEST))) / (1 - LOWEST)).toFixed(1))
  const step = panel.width / weathers.length
  const scale = [0.85, 0.9, 0.95, 1].map(
    (share) =>
      `<line x1="${left}" x2="${left + panel.width}" y1="${y(share)}" y2="${y(share)}" stroke="#ddd"/><text x="${left - 8}" y="${y(share) + 4}" text-anchor="end">${Math.round(share * 100)} %</text>`,
  )
  const names = weathers.map(
    (name, i) =>
      `<text x="${left + (i + 0.5) * step}" y="${top + panel.height + 18}" text-anchor="middle">${name}</text>`,
  )
  const points = weathers.flatMap((weather, i) =>
    styles.flatMap(({ family, directions, fill, stroke }, k) => {
      const cell = cells.find(
        (one) => one.family === family && one.instruments === instruments && one.weather === weather,
      )
      const found = cell?.shares.find((one) => one.quantity === quantity && one.directions === directions)
      if (!found) return []
      const x = Number((left + (i + 0.5) * step + (k - 1.5) * 14).toFixed(1))
      return `<circle cx="${x}" cy="${y(found.share)}" r="5" fill="${fill}" stroke="${stroke}" stroke-width="2"/>`
    }),
  )
  const band = `<rect x="${left}" y="${y(0.97)}" width="${panel.width}" height="${y(0.93) - y(0.97)}" fill="#2e7d32" opacity="0.18"/>`
  return `<text x="${left}" y="${top - 10}" font-weight="bold">${titles[quantity]}, ${instruments} instruments</text>${scale.join('')}${band}${points.join('')}${names.join('')}`
}
