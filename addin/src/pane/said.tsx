import { visible } from '@draughtbook/shared-calc'

/** A number with its unit, and the address of a cell: what is not read across the end of a line. */
const WHOLE =
  /[−±]?\d[\d.\u00a0]* (?:%|°[CF]|[hk]?Pa|mbar|inH2O|(?:kg|m|m³|l)\/(?:s|h|m³|\(h·m²\))|1\/h|m·K|cfm|[cm]?m[²³]?|ft[²³]|K|s|h)(?![\p{L}\d/·])|(?:'[^']{1,16}'|[\p{L}\d_]{1,16})!\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?/gu

/** A sentence as it is shown: parts that belong together stay on one line, and nothing in it is hidden. */
export function Said({ text }: { text: string }) {
  const shown = visible(text)
  const parts = []
  let done = 0
  for (const { 0: part, index } of shown.matchAll(WHOLE)) {
    parts.push(
      shown.slice(done, index),
      <span class="unbroken" key={index}>
        {part}
      </span>,
    )
    done = index + part.length
  }
  return (
    <>
      {parts}
      {shown.slice(done)}
    </>
  )
}
