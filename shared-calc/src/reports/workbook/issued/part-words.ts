const PARTS: readonly (readonly [RegExp, string])[] = [
  [/sharedStrings/, 'cell texts'],
  [/styles/, 'cell styles'],
  [/theme/, 'theme colours and fonts'],
  [/charts\//, 'the chart'],
  [/drawings\//, 'a drawing'],
  [/media\//, 'a picture'],
  [/docProps\/core/, 'file properties'],
  [/docProps/, 'file properties'],
  [/externalLink/, 'a link to another workbook'],
  [/comments|vmlDrawing/i, 'comments'],
  [/calcChain/, 'calculation order'],
  [/workbook\.xml$/, 'workbook settings'],
  [/_rels|Content_Types/, 'list of parts'],
]

/** What a part of the file is about. @param sheet - the sheet it holds */
export function partWords(path: string, sheet: string | undefined): string {
  if (sheet !== undefined) return `sheet ${sheet}`
  return PARTS.find(([pattern]) => pattern.test(path))?.[1] ?? `part ${path}`
}
