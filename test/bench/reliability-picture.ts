import type { Quantity } from './coverage.js'
import type { Reliability } from './reliability.js'

export interface ReliabilityCurve {
  readonly family: string
  readonly quantity: Quantity
  readonly points: readonly Reliability[]
}

const size = { side: 420, left: 70, top: 80, gap: 70 }
const colours: Readonly<Record<string, string>> = { known: '#1f5f8b', 'held back': '#b5541c' }
const titles: Readonly<Record<Quantity, string>> = { q50: 'flow at 50 Pa', ela4: 'ELA at 4 Pa' }

/** Stated probabilities of meeting a target against how often it was met, a panel for each figure, as an SVG picture. */
export function reliabilityPicture(curves: readonly ReliabilityCurve[]): string {
  const panels = (['q50', 'ela4'] as const).map((quantity, column) =>
    onePanel(
      curves.filter((curve) => curve.quantity === quantity),
      quantity,
      size.left + column * (size.side + size.gap),
    ),
  )
  const width = size.left + 2 * size.side + size.gap + 20
  const height = size.top + size.side + 60
  const keys = Object.entries(colours).map(
    ([family, colour], i) =>
      `<circle cx="${size.left + 6 + i * 130}" cy="46" r="4" fill="${colour}"/><text x="${size.left + 16 + i * 130}" y="50">${family} houses</text>`,
  )
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12" role="img" aria-labelledby="title"><title id="title">How often a target is met against the probability stated for it</title><rect width="100%" height="100%" fill="white"/><text x="${size.left}" y="24" font-size="15" font-weight="bold">How often a target is met against the probability stated for it (band: 3 points either way)</text>${keys.join('')}${panels.join('')}</svg>\n`
}

function onePanel(curves: readonly ReliabilityCurve[], quantity: Quantity, left: number): string {
  const place = (share: number) => Number((share * size.side).toFixed(1))
  const x = (share: number) => left + place(share)
  const y = (share: number) => Number((size.top + size.side - place(share)).toFixed(1))
  const marks = [0, 0.25, 0.5, 0.75, 1]
  const scale = marks.map(
    (share) =>
      `<line x1="${x(0)}" x2="${x(1)}" y1="${y(share)}" y2="${y(share)}" stroke="#ddd"/><line x1="${x(share)}" x2="${x(share)}" y1="${y(0)}" y2="${y(1)}" stroke="#ddd"/><text x="${x(0) - 8}" y="${y(share) + 4}" text-anchor="end">${share * 100} %</text><text x="${x(share)}" y="${y(0) + 18}" text-anchor="middle">${share * 100} %</text>`,
  )
  const corners = [
    [0, 0],
    [0, 0.03],
    [0.97, 1],
    [1, 1],
    [1, 0.97],
    [0.03, 0],
  ] as const
  const band = `<polygon points="${corners.map(([a, b]) => `${x(a)},${y(b)}`).join(' ')}" fill="#2e7d32" opacity="0.2"/>`
  const dots = curves.flatMap(({ family, points }) =>
    points
      .filter(({ decisions }) => decisions > 0)
      .map(({ stated, met }) => `<circle cx="${x(stated)}" cy="${y(met)}" r="4" fill="${colours[family]}"/>`),
  )
  return `<text x="${left}" y="${size.top - 10}" font-weight="bold">${titles[quantity]}</text>${scale.join('')}${band}${dots.join('')}<text x="${x(0.5)}" y="${y(0) + 40}" text-anchor="middle">stated</text><text x="${x(0) - 48}" y="${y(0.5)}" text-anchor="middle" transform="rotate(-90 ${x(0) - 48} ${y(0.5)})">met</text>`
}
