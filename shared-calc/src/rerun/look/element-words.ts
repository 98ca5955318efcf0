const ELEMENTS: Readonly<Record<string, string>> = {
  sheetData: 'rows and cell formats',
  cols: 'columns',
  mergeCells: 'merged cells',
  conditionalFormatting: 'conditional formats',
  dataValidations: 'data validation',
  hyperlinks: 'links',
  printOptions: 'print set-up',
  pageMargins: 'print set-up',
  pageSetup: 'print set-up',
  headerFooter: 'header and footer',
  rowBreaks: 'page breaks',
  colBreaks: 'page breaks',
  sheetProtection: 'protection',
  protectedRanges: 'protection',
  sheetViews: 'sheet view',
  sheetFormatPr: 'default row height and column width',
  sheetPr: 'sheet settings',
  autoFilter: 'filter',
  drawing: 'drawings',
  legacyDrawing: 'comments',
  picture: 'background picture',
  extLst: 'extensions',
  cellXfs: 'cell formats',
  cellStyleXfs: 'cell formats',
  cellStyles: 'cell formats',
  dxfs: 'conditional formats',
  fonts: 'fonts',
  fills: 'background colours',
  borders: 'borders',
  numFmts: 'number formats',
  calcPr: 'calculation settings',
  definedNames: 'defined names',
  workbookProtection: 'protection',
  clrScheme: 'colours',
  fontScheme: 'fonts',
}

/** Where in a part something is, in words, then by the element's own name for whoever looks into the file. */
export function topWords(names: readonly string[]): string {
  const known = names.map((name) => ELEMENTS[name]).find((word) => word !== undefined)
  const last = names.at(-1) ?? ''
  return known === undefined
    ? `changed (${names.slice(1).join(' › ') || last})`
    : `${known} changed (${last})`
}
