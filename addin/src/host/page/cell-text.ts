import type { Cell } from '@draughtbook/shared-calc/log'

/** How the on-page grid shows a cell: near to what a spreadsheet shows, never less exact than its format asks. */
export function cellText(cell: Cell | undefined, date1904 = false): string {
  if (!cell) return ''
  if (cell.kind === 'unstored') return '(not calculated)'
  if (cell.kind === 'boolean') return cell.value ? 'TRUE' : 'FALSE'
  if (typeof cell.value !== 'number') return String(cell.value)
  return numberText(cell.value, cell.format ?? 'General', date1904)
}

function numberText(value: number, format: string, date1904: boolean): string {
  const [section = ''] = format.split(';')
  const words = section.replace(/"([^"]*)"|\\(.)|\[[^[\]]*\]/g, '')
  const literals = [...section.matchAll(/"([^"]*)"/g)].map(([, text = '']) => text)
  if (/[ymdhs]/i.test(words) && !/^general$/i.test(words)) return dateText(value, words, date1904)
  const decimals = /[0#]\.(0+)/.exec(words)?.[1]?.length
  const percent = words.includes('%')
  const shown = percent ? value * 100 : value
  const plain =
    decimals !== undefined
      ? shown.toFixed(decimals)
      : /^[#,]*0+%?\s*$/.test(words)
        ? shown.toFixed(0)
        : shortest(shown)
  const [before = '', after = ''] =
    section.indexOf('"') < section.search(/[0#]/) ? [literals.join('')] : ['', literals.join('')]
  return `${before}${plain}${percent ? '%' : ''}${after}`
}

/** Eleven figures, as spreadsheets show a number without a format of its own. */
const shortest = (value: number): string => String(Number(value.toPrecision(11)))

const DAY_ms = 86_400_000

/** Days since 1900 (with the spreadsheets' 29 February 1900) or since 1904. */
function dateText(serial: number, words: string, date1904: boolean): string {
  const days = date1904 ? serial + 1462 : serial
  const date = new Date(Date.UTC(1899, 11, 30) + Math.round(days * DAY_ms))
  if (Number.isNaN(date.getTime())) return String(serial)
  const [day = '', time = ''] = date.toISOString().split('T')
  const hasDay = /[yd]/i.test(words)
  const hasTime = /[hs]/i.test(words)
  return [hasDay ? day : '', hasTime ? time.slice(0, 8) : ''].filter(Boolean).join(' ')
}
