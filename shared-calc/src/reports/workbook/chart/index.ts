export { addCharts, addChartsTo } from './add-charts.js'
export type {
  BarStyle,
  CachedValue,
  ChartAnchor,
  ChartAxis,
  ChartDescription,
  ChartSeries,
  LineStyle,
  MarkerStyle,
  RangeReference,
  SeriesStyle,
} from './description.js'
export { printStyle } from './print-style.js'
