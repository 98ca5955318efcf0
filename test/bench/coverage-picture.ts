import type { Coverage } from './coverage.js'

const series = [
  { label: 'q50, fit scatter alone', of: ({ q50 }: Coverage) => q50.fitScatter, fill: '#c9a227' },
  { label: 'q50, full budget', of: ({ q50 }: Coverage) => q50.budget, fill: '#1f5f8b' },
  { label: 'ELA at 4 Pa, fit scatter alone', of: ({ ela4 }: Coverage) => ela4.fitScatter, fill: '#e6d69a' },
  { label: 'ELA at 4 Pa, full budget', of: ({ ela4 }: Coverage) => ela4.budget, fill: '#7fb2d1' },
] as const

const size = { width: 760, height: 400, left: 60, top: 70, right: 20, bottom: 50 }
const bar = 32

/** The coverage of the stated 95 % intervals at each wind speed, as an SVG picture. */
export function coveragePicture(coverages: readonly Coverage[], tests: number): string {
  const plot = { width: size.width - size.left - size.right, height: size.height - size.top - size.bottom }
  const y = (share: number) => size.top + plot.height * (1 - share)
  const group = plot.width / coverages.length
  const bars = coverages.flatMap((coverage, g) =>
    series.map(({ of, fill }, i) => {
      const share = of(coverage)
      const x = size.left + g * group + (group - series.length * bar) / 2 + i * bar
      const top = y(share)
      return `<rect x="${x}" y="${top}" width="${bar - 3}" height="${y(0) - top}" fill="${fill}"/><text x="${x + bar / 2 - 1.5}" y="${top - 4}" text-anchor="middle" font-size="10">${(share * 100).toFixed(0)}</text>`
    }),
  )
  const winds = coverages.map(
    ({ wind_m_s }, g) =>
      `<text x="${size.left + (g + 0.5) * group}" y="${size.height - 28}" text-anchor="middle">wind ${wind_m_s} m/s</text>`,
  )
  const scale = [0, 0.25, 0.5, 0.75, 1].map(
    (share) =>
      `<line x1="${size.left}" x2="${size.width - size.right}" y1="${y(share)}" y2="${y(share)}" stroke="#ddd"/><text x="${size.left - 8}" y="${y(share) + 4}" text-anchor="end">${share * 100} %</text>`,
  )
  const keys = series.map(
    ({ label, fill }, i) =>
      `<rect x="${size.left + (i % 2) * 300}" y="${34 + Math.floor(i / 2) * 16}" width="11" height="11" fill="${fill}"/><text x="${size.left + 16 + (i % 2) * 300}" y="${44 + Math.floor(i / 2) * 16}">${label}</text>`,
  )
  const goal = `<rect x="${size.left}" y="${y(0.97)}" width="${plot.width}" height="${y(0.93) - y(0.97)}" fill="#2e7d32" opacity="0.25"/>`
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size.width} ${size.height}" font-family="sans-serif" font-size="12"><rect width="100%" height="100%" fill="white"/><text x="${size.left}" y="20" font-size="14" font-weight="bold">How often the stated 95 % interval holds the truth (${tests} simulated tests each; band: 93 to 97 %)</text>${keys.join('')}${scale.join('')}${goal}${bars.join('')}${winds.join('')}</svg>`
}
