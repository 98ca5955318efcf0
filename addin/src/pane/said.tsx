import { visible } from '@draughtbook/shared-calc'

/** A number with its unit. */
const AMOUNT =
  /[−±]?\d[\d.\u00a0]{0,16} (?:%|°[CF]|[hk]?Pa|mbar|inH2O|(?:kg|m|m³|l)\/(?:s|h|m³|\(h·m²\))|1\/h|m·K|cfm|[cm]?m[²³]?|ft[²³]|K|s|h)(?![\p{L}\d/·])/gu

/** A cell's address, from the mark behind its sheet's name. */
const ADDRESS = /!\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?/g

/** A longer name of a sheet may break. */
const LONGEST_NAME = 16

/** Where the name of a sheet begins that ends at a place: at its quotation mark, or after a blank. */
function nameStart(text: string, end: number): number {
  const quoted = text[end - 1] === "'"
  const start = quoted ? text.lastIndexOf("'", end - 2) : text.lastIndexOf(' ', end) + 1
  return start < 0 || end - start > LONGEST_NAME + (quoted ? 2 : 0) ? end : start
}

/** What is not read across the end of a line, in order. */
function unbroken(text: string): { readonly start: number; readonly end: number }[] {
  const amounts = [...text.matchAll(AMOUNT)].map(({ 0: part, index }) => ({
    start: index,
    end: index + part.length,
  }))
  const addresses = [...text.matchAll(ADDRESS)].map(({ 0: part, index }) => ({
    start: nameStart(text, index),
    end: index + part.length,
  }))
  return [...amounts, ...addresses].sort((one, other) => one.start - other.start)
}

/** A sentence as it is shown: parts that belong together stay on one line, and nothing in it is hidden. */
export function Said({ text }: { text: string }) {
  const shown = visible(text)
  const parts = []
  let done = 0
  for (const { start, end } of unbroken(shown)) {
    // A name such as "run 3 m" is both.
    if (start < done) continue
    parts.push(
      shown.slice(done, start),
      <span class="unbroken" key={start}>
        {shown.slice(start, end)}
      </span>,
    )
    done = end
  }
  return (
    <>
      {parts}
      {shown.slice(done)}
    </>
  )
}
