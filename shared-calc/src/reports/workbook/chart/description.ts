/** What a chart shows, in words; see `addCharts`. Column and row numbers count from 0, sizes are in points. */
export interface ChartDescription {
  sheetName: string
  anchor: ChartAnchor
  /** An empty title shows none. */
  title: string
  /** Alternative text for screen readers; the title when left out. */
  altText?: string
  kind: 'scatter' | 'line' | 'column'
  xAxis: ChartAxis
  yAxis: ChartAxis
  series: readonly ChartSeries[]
  legend: 'bottom' | 'top' | 'left' | 'right' | 'none'
}

/** The chart covers the cells from `from` up to, not including, `to`. */
export interface ChartAnchor {
  fromCol: number
  fromRow: number
  toCol: number
  toRow: number
}

export interface ChartAxis {
  title: string
  /** Base 10; never on the x axis of a line or column chart. */
  log?: boolean
  min?: number
  max?: number
  /** Whether the axis writes its own numbers; true when left out. */
  ownLabels?: boolean
  /** Spreadsheet number format, 'General' when left out. */
  numberFormat?: string
  /** Only the x axis of a line or column chart; 'text' when left out. 'date' takes serial day numbers. */
  category?: 'text' | 'number' | 'date'
}

export interface ChartSeries {
  /** Literal text, not a reference. */
  name: string
  xRef: RangeReference
  yRef: RangeReference
  /** Values a viewer shows without recalculating, one for each cell of the range; null is an empty cell. */
  xCache?: readonly CachedValue[]
  yCache?: readonly (number | null)[]
  /** Only what it names is drawn; left out, a style by position that stays distinct in black and white. */
  style?: SeriesStyle
  /** True when left out. */
  inLegend?: boolean
  /** A text beside each point, for what an axis cannot label by itself. */
  labels?: { texts: readonly string[]; position: 'b' | 'l' | 'r' | 't' }
}

export type CachedValue = number | string | null

/** One column or one row of cells, such as { sheet: 'Working', range: 'B5:B14' }. */
export interface RangeReference {
  sheet: string
  range: string
}

/** Colours are six hexadecimal digits, RRGGBB. */
export interface SeriesStyle {
  line?: LineStyle
  marker?: MarkerStyle
  bar?: BarStyle
}

export interface LineStyle {
  colour: string
  width: number
  dash: 'solid' | 'dash' | 'sysDash' | 'sysDot' | 'dashDot' | 'lgDash' | 'lgDashDot'
}

export interface MarkerStyle {
  shape: 'circle' | 'square' | 'triangle' | 'diamond' | 'x' | 'plus'
  /** 2 to 72 points. */
  size: number
  fill: string
  outline: string
}

export interface BarStyle {
  fill: string
  outline: string
  /** Hatching in the outline colour; plain when left out. */
  pattern?: 'wdUpDiag' | 'wdDnDiag' | 'smGrid' | 'pct20'
}
