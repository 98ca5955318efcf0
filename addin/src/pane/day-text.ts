/** 14 October 2026; what is no day stands as it is. */
export function dayText(day: string): string {
  const at = new Date(`${day}T00:00:00Z`)
  return Number.isNaN(at.getTime())
    ? day
    : new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' }).format(at)
}
