const MEBIBYTE = 1024 * 1024

/**
 * What the reader accepts. Own choice, no source: a log of a year's tests stays far below, and a file at the limits
 * is still refused or read within 2 s and 300 MB. Every limit is checked before or while reading, never after.
 */
export const LIMITS = {
  /** Size of the file as it arrives. */
  fileBytes: 32 * MEBIBYTE,
  /** Size of a text file. */
  textBytes: 16 * MEBIBYTE,
  /** Parts inside the zip. */
  entries: 2000,
  /** Unpacked size of one part, declared or actual. */
  partBytes: 32 * MEBIBYTE,
  /** Unpacked size of all parts together, as declared. */
  totalBytes: 192 * MEBIBYTE,
  /** Unpacked over packed size, judged for parts above {@link LIMITS.ratioFromBytes}. Deflate's own ceiling is about 1032. */
  ratio: 250,
  ratioFromBytes: MEBIBYTE,
  sheets: 500,
  /** Rows and columns of the file format. */
  rows: 1_048_576,
  columns: 16_384,
  /** Rows × columns a sheet says it uses. */
  dimensionCells: 20_000_000,
  /** Cells that hold something, over all sheets read: a series of 100,000 rows in four columns and some more. */
  cells: 450_000,
  /** Fields of a text file, which take less room than cells. */
  textCells: 1_500_000,
  /** Elements inside elements; a worksheet needs about 8. */
  xmlDepth: 64,
  /** Elements of one part: a full sheet has about three per cell. */
  xmlElements: 2_000_000,
  /** Separate texts of the workbook. */
  strings: 200_000,
  /** Formats and fonts; the format's own ceiling is 65,490. */
  styles: 66_000,
  /** Merged blocks of one sheet; defined names of a workbook. */
  merges: 50_000,
  /** Comments of one sheet, and how much of each is looked at. */
  comments: 20_000,
  commentCharacters: 400,
  names: 20_000,
  /** Characters of one cell: the spreadsheet's own limit. */
  cellCharacters: 32_767,
  /** Characters of a number format: the spreadsheet's own limit. */
  formatCharacters: 255,
  /** Longest text that may be a label, a number or a date. */
  labelCharacters: 200,
  /** Texts that may be labels, over all sheets searched for a layout: sixty forms of three hundred labels. */
  labels: 20_000,
  /** Rows of a raw gauge series. */
  seriesRows: 100_000,
  /** Readings of one table. */
  readings: 1000,
  /** Tests of one workbook. */
  tests: 1000,
} as const
