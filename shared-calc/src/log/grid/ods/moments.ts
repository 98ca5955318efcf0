const DAY_ms = 86_400_000
const START = Date.UTC(1899, 11, 30)

/**
 * A day or moment as OpenDocument stores it, 2026-10-14 or 2026-10-14T09:30:00, as the serial day a workbook would hold.
 * Undefined for anything else.
 */
export function serialDay(said: string | undefined): number | undefined {
  const match = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?)?Z?$/.exec(said ?? '')
  if (!match) return undefined
  const [year, month, day, hours, minutes, seconds] = match.slice(1).map((part) => Number(part ?? 0))
  const midnight = Date.UTC(year as number, (month as number) - 1, day)
  const date = new Date(midnight)
  if (date.getUTCMonth() !== (month as number) - 1 || date.getUTCDate() !== day) return undefined
  return (
    Math.round((midnight - START) / DAY_ms) +
    ((hours as number) * 3600 + (minutes as number) * 60 + (seconds as number)) / 86_400
  )
}

/** A duration such as PT10H20M05.5S as its share of a day. Undefined for anything else. */
export function shareOfDay(said: string | undefined): number | undefined {
  const match = /^(-?)P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:[.,]\d+)?)S)?)?$/.exec(said ?? '')
  if (!match) return undefined
  const [days, hours, minutes, seconds] = match
    .slice(2)
    .map((part) => Number((part ?? '0').replace(',', '.')))
  const share =
    (days as number) + ((hours as number) * 3600 + (minutes as number) * 60 + (seconds as number)) / 86_400
  return match[1] ? -share : share
}
