import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'

/**
 * Makes a summary workbook fit to be inserted into another: sheet names that are taken get a number, in the sheets,
 * formulas and links alike, and workbook-level names go (Excel can damage them, OfficeDev/office-js issue 4772).
 * Formulas refer by cell throughout, so nothing is lost with the names.
 * @param taken sheet names of the other workbook
 */
export function forInsertion(
  bytes: Uint8Array,
  taken: readonly string[],
): { bytes: Uint8Array; renamed: ReadonlyMap<string, string> } {
  const parts = unzipSync(bytes)
  const workbook = strFromU8(parts['xl/workbook.xml'] ?? new Uint8Array())
  const names = [...workbook.matchAll(/<sheet\b[^>]*?\bname="([^"]+)"/g)].map(([, name = '']) => name)
  const renamed = freeNames(names, taken)
  const changed = Object.entries(parts).map(([path, content]): [string, Uint8Array] => {
    if (!/^xl\/(workbook|worksheets\/sheet\d+|charts\/chart\d+)\.xml$/.test(path)) return [path, content]
    let text = strFromU8(content)
    if (path === 'xl/workbook.xml') text = renameSheets(withoutNames(text), renamed)
    return [path, strToU8(renameReferences(text, renamed))]
  })
  return { bytes: zipSync(Object.fromEntries(changed)), renamed }
}

function freeNames(names: readonly string[], taken: readonly string[]): Map<string, string> {
  const used = new Set(taken.map((name) => name.toLowerCase()))
  const renamed = new Map<string, string>()
  for (const name of names) {
    let free = name
    for (let count = 2; used.has(free.toLowerCase()); count++) free = `${name} (${count})`
    used.add(free.toLowerCase())
    renamed.set(name, free)
  }
  return renamed
}

/** Print areas and titles belong to a sheet and stay. */
const withoutNames = (workbook: string): string =>
  workbook
    .replace(/<definedName\b(?![^>]*localSheetId)[^>]*>[^<]*<\/definedName>/g, '')
    .replace(/<definedNames>\s*<\/definedNames>/g, '')

const renameSheets = (workbook: string, renamed: ReadonlyMap<string, string>): string =>
  workbook.replace(
    /(<sheet\b[^>]*?\bname=")([^"]+)(")/g,
    (_, before: string, name: string, after: string) => `${before}${renamed.get(name) ?? name}${after}`,
  )

/** Inside formulas, chart references, names and links only: words in cells stay as they are. */
function renameReferences(xml: string, renamed: ReadonlyMap<string, string>): string {
  const rename = (reference: string): string =>
    [...renamed].reduce(
      (text, [from, to]) =>
        from === to
          ? text
          : text.replace(new RegExp(`(?<![\\w'.])(?:'|&apos;)?${from}(?:'|&apos;)?!`, 'g'), `'${to}'!`),
      reference,
    )
  return xml
    .replace(
      /(<(?:c:)?(?:f|formula|formula1|formula2|definedName)\b[^>]*>)([^<]*)(<)/g,
      (_, open: string, formula: string, close: string) => `${open}${rename(formula)}${close}`,
    )
    .replace(
      /(\blocation=")([^"]*)(")/g,
      (_, open: string, place: string, close: string) => `${open}${rename(place)}${close}`,
    )
}
