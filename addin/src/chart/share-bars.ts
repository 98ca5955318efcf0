/** One bar: a cause with its share of the variance, 0 to 1. */
export interface ShareBar {
  readonly label: string
  readonly share: number
  /** Whether all readings share the cause, or one run has it of its own: two looks. */
  readonly scope: 'shared' | 'run'
}

const ROW = 22
const GAP = 5
const LABEL_SHARE = 0.56
const VALUE_WIDTH = 42

/**
 * The contributions of an uncertainty budget as horizontal bars, largest first, as SVG text without any style of its
 * own (classes only). Bars below `least` are drawn together as one.
 */
export function shareBars(bars: readonly ShareBar[], width_px: number, least = 0.005): string {
  const sorted = [...bars].sort((a, b) => b.share - a.share)
  const shown = sorted.filter(({ share }) => share >= least)
  const rest = sorted.slice(shown.length)
  const others: ShareBar[] =
    rest.length === 0
      ? []
      : [
          {
            label: `${rest.length} others together`,
            share: rest.reduce((sum, { share }) => sum + share, 0),
            scope: 'shared',
          },
        ]
  const rows = [...shown, ...others]
  const left = Math.round(width_px * LABEL_SHARE)
  const room = width_px - left - VALUE_WIDTH
  const height = rows.length * ROW + GAP
  const words = rows.map(({ label, share }) => `${label} ${percent(share)}`).join('; ')
  const drawn = rows.map(({ label, share, scope }, i) => {
    const top = i * ROW + GAP
    const long = Math.max(1, room * share)
    const middle = top + (ROW - GAP) / 2 + 4
    return [
      `<text class="cause" x="${left - 6}" y="${middle}" text-anchor="end">${escaped(fitted(label, left))}</text>`,
      `<rect class="bar ${scope}" x="${left}" y="${top}" width="${long.toFixed(1)}" height="${ROW - GAP}"/>`,
      `<text class="share" x="${(left + long + 5).toFixed(1)}" y="${middle}">${percent(share)}</text>`,
    ].join('')
  })
  return `<svg class="share-bars" viewBox="0 0 ${width_px} ${height}" width="${width_px}" height="${height}" role="img" aria-label="${escaped(`Share of each cause: ${words}`)}">${drawn.join('')}</svg>`
}

/** A share as printed: never rounded to nothing. */
const percent = (share: number): string =>
  share > 0 && share < 0.005 ? '< 1 %' : `${Math.round(share * 100)} %`

/** At most 6.2 pixels a character on average: a longer label is cut, the whole is in the table below. */
function fitted(label: string, width_px: number): string {
  const most = Math.floor((width_px - 8) / 6.2)
  return label.length <= most ? label : `${label.slice(0, Math.max(1, most - 1))}…`
}

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign)
