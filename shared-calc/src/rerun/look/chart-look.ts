import { comparableFormula } from '../formula-text.js'
import { type Colour, drawnColour, isLight } from './colours.js'
import { unusualInChart } from './usual-elements.js'
import { at, attr, child, children, deep, isOn, textOf, type XmlNode } from './xml-tree.js'

export interface SeriesLook {
  readonly name: string
  readonly x: string
  readonly y: string
  /** Values kept in the file; a viewer without an engine draws these. None where the program keeps none. */
  readonly xStored: readonly number[]
  readonly yStored: readonly number[]
  /** How many values are said to be stored, where that is not how many are; and formats that show something else than digits. */
  readonly storedOddly: string
  readonly marker: string
  readonly line: Colour | undefined
  /** Of columns. */
  readonly fill: Colour | undefined
  /** Points; undefined where the program chooses, or where there is no line. */
  readonly lineWidth: number | undefined
  readonly dot: Colour | undefined
  /** Points; undefined where there is no mark, or the program chooses. */
  readonly dotSize: number | undefined
  readonly others: number
  /** Points with a look of their own. */
  readonly odd: number
  readonly smooth: boolean
  /** Texts that points carry. Some programs lose them, and take the last for the series' name. */
  readonly labels: readonly string[]
  /** What is shown at all points, beside texts of their own. */
  readonly atPoints: string
}

/** What is seen of a chart. Texts and settings by name; colours and line widths that programs restyle are left out. */
export interface ChartLook {
  readonly series: readonly SeriesLook[]
  /** In words → value. */
  readonly settings: ReadonlyMap<string, string>
  /** Series that the legend leaves out, by their numbers. */
  readonly notInLegend: readonly string[]
}

const KINDS = /Chart$/

export function chartOf(tree: XmlNode | undefined): ChartLook {
  const chart = child(tree, 'chart')
  const area = child(chart, 'plotArea')
  const plots = (area?.children ?? []).filter(({ name }) => KINDS.test(name))
  const axes = (area?.children ?? []).filter(({ name }) => name.endsWith('Ax'))
  return {
    series: plots.flatMap((plot) =>
      children(plot, 'ser').map((series) => seriesOf(series, plot.name === 'barChart')),
    ),
    notInLegend: deep(child(chart, 'legend'), 'legendEntry')
      .filter((entry) => isOn(attr(child(entry, 'delete'), 'val'), child(entry, 'delete') !== undefined))
      .map((entry) => attr(child(entry, 'idx'), 'val') ?? ''),
    settings: new Map([
      ['ground', groundOf(tree, area)],
      ['parts moved', placedParts(chart)],
      ['text too pale or too small', oddTexts(tree)],
      ['number format of the labels', labelFormats(chart)],
      ['other contents', unusualInChart(tree)],
      ['kind', plots.map(({ name }) => name).join(', ')],
      ['columns', plots.flatMap(columnsOf).join('; ') || 'none'],
      ['title', plain(textOf(child(child(chart, 'title'), 'tx')))],
      ['legend', child(chart, 'legend') ? 'yes' : 'no'],
      ['labels of all points', plots.map((plot) => shownAtPoints(child(plot, 'dLbls'))).join(', ')],
      ['pictures in it', deep(tree, 'blipFill').length > 0 ? 'yes' : 'no'],
      ['shapes drawn over it', child(tree, 'userShapes') ? 'yes' : 'no'],
      [
        'text labels',
        plain(
          deep(chart, 'dLbl')
            .flatMap((label) => deep(label, 't'))
            .map(({ text }) => text)
            .join(' '),
        ),
      ],
      ...axes.flatMap(axisSettings),
    ]),
  }
}

/** How the columns of a plot stand, with what holds where nothing is said (21.2.2.17, 76, 74, 131). */
function columnsOf(plot: XmlNode): string[] {
  if (plot.name !== 'barChart') return []
  const said = (name: string, otherwise: string) => attr(child(plot, name), 'val') ?? otherwise
  return [
    `${said('barDir', 'col')}, ${said('grouping', 'clustered')}, gap ${said('gapWidth', '150')}, overlap ${said('overlap', '0')}`,
  ]
}

/** Colour behind the curve, where it is not that of paper. */
const groundOf = (tree: XmlNode | undefined, area: XmlNode | undefined): string =>
  [child(area, 'spPr'), child(tree, 'spPr')]
    .map(drawnColour)
    .find((colour) => colour !== undefined && colour !== 'none' && colour !== 'FFFFFF') ?? 'white'

/** Parts of a chart that lie where somebody put them; where none says, programs lay them out. */
const placedParts = (chart: XmlNode | undefined): string =>
  [
    ...[child(chart, 'plotArea'), child(chart, 'legend')].map(
      (part) => at(part, 'layout', 'manualLayout') && part,
    ),
    ...deep(chart, 'title').map((title) => at(title, 'layout', 'manualLayout') && title),
    ...[child(chart, 'legend')].map((part) => isOn(attr(child(part, 'overlay'), 'val')) && part),
  ]
    .flatMap((part) => (part ? [part.name] : []))
    .join(', ') || 'none'

function oddTexts(tree: XmlNode | undefined): string {
  const fonts = [...deep(tree, 'defRPr'), ...deep(tree, 'rPr')]
  const odd = fonts.some((font) => {
    const colour = drawnColour(font)
    const size = attr(font, 'sz')
    return (colour !== undefined && isLight(colour)) || (size !== undefined && Number(size) < LEAST_SIZE)
  })
  return odd ? 'yes' : 'no'
}

/** Hundredths of a point. */
const LEAST_SIZE = 600

/** Number formats of labels on points: a format may say anything in place of a number. */
const labelFormats = (chart: XmlNode | undefined): string =>
  [...deep(chart, 'dLbls'), ...deep(chart, 'dLbl')]
    .flatMap((labels) => children(labels, 'numFmt'))
    .map((one) => attr(one, 'formatCode') ?? 'General')
    .filter((code) => code !== 'General')
    .join('; ') || 'General'

function crossing(axis: XmlNode): string {
  const where = attr(child(axis, 'crossesAt'), 'val')
  return where === undefined ? (attr(child(axis, 'crosses'), 'val') ?? 'autoZero') : `at ${where}`
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim()

function axisSettings(axis: XmlNode, index: number): [string, string][] {
  const side = { b: 'horizontal axis', t: 'horizontal axis', l: 'vertical axis', r: 'vertical axis' }
  const name = side[(attr(child(axis, 'axPos'), 'val') ?? '') as 'b'] ?? `axis ${index + 1}`
  const scaling = child(axis, 'scaling')
  const number = (key: string) => {
    const text = attr(child(scaling, key), 'val')
    return text === undefined ? 'automatic' : String(Number(text))
  }
  return [
    [`${name}, title`, plain(textOf(child(child(axis, 'title'), 'tx')))],
    [`${name}, from`, number('min')],
    [`${name}, to`, number('max')],
    [`${name}, logarithmic`, child(scaling, 'logBase') ? 'yes' : 'no'],
    [`${name}, meets the other`, crossing(axis)],
    [`${name}, direction`, attr(child(scaling, 'orientation'), 'val') ?? 'minMax'],
    [`${name}, numbers`, attr(child(axis, 'tickLblPos'), 'val') === 'none' ? 'no' : 'yes'],
    [`${name}, display unit`, displayUnit(child(axis, 'dispUnits'))],
    [`${name}, numbers at every`, stepOf(axis)],
    [`${name}, shown`, isOn(attr(child(axis, 'delete'), 'val')) ? 'no' : 'yes'],
    // Where an axis has no numbers, their format is not seen, and programs write another.
    ...(attr(child(axis, 'tickLblPos'), 'val') === 'none'
      ? []
      : [
          [`${name}, number format`, plainFormat(attr(child(axis, 'numFmt'), 'formatCode') ?? 'General')] as [
            string,
            string,
          ],
        ]),
  ]
}

/** Some programs write a blank of a format as a character shown as it is. */
const plainFormat = (code: string): string => code.replaceAll('\\ ', ' ')

/** How far apart the numbers of an axis stand; on a logarithmic one, by which factor. */
function stepOf(axis: XmlNode): string {
  const step = attr(child(axis, 'majorUnit'), 'val')
  return step === undefined ? 'automatic' : String(Number(step))
}

const displayUnit = (units: XmlNode | undefined): string =>
  attr(child(units, 'builtInUnit') ?? child(units, 'custUnit'), 'val') ?? 'none'

function seriesOf(series: XmlNode, columns: boolean): SeriesLook {
  const x = child(series, 'xVal') ?? child(series, 'cat')
  const y = child(series, 'yVal') ?? child(series, 'val')
  const marker = attr(at(series, 'marker', 'symbol'), 'val') ?? 'automatic'
  return {
    name: nameOf(child(series, 'tx')),
    x: rangeOf(x),
    y: rangeOf(y),
    xStored: storedOf(x),
    yStored: storedOf(y),
    storedOddly: [x, y].flatMap(oddlyStored).join(', ') || 'no',
    marker,
    line: drawnColour(at(series, 'spPr', 'ln')),
    fill: columns ? drawnColour(child(series, 'spPr')) : undefined,
    lineWidth: widthOf(at(series, 'spPr', 'ln')),
    dotSize: marker === 'none' ? undefined : numberOf(attr(at(series, 'marker', 'size'), 'val')),
    dot: drawnColour(at(series, 'marker', 'spPr')),
    labels: deep(child(series, 'dLbls'), 'dLbl').map((label) => plain(textOf(child(label, 'tx')))),
    atPoints: shownAtPoints(child(series, 'dLbls')),
    odd: children(series, 'dPt').filter((point) => isOdd(point, series)).length,
    smooth: child(series, 'smooth') !== undefined && isOn(attr(child(series, 'smooth'), 'val'), true),
    others: children(series, 'trendline').length + children(series, 'errBars').length,
  }
}

/** Kinds of labels that all points have (21.2.2.49). */
const shownAtPoints = (labels: XmlNode | undefined): string =>
  isOn(attr(child(labels, 'delete'), 'val'))
    ? 'nothing'
    : (labels?.children ?? [])
        .filter(
          (one) =>
            /^show(Val|CatName|SerName|Percent|BubbleSize|LegendKey)$/.test(one.name) &&
            isOn(attr(one, 'val'), true),
        )
        .map(({ name }) => name.slice('show'.length))
        .join(', ') || 'nothing'

/** Points of a line that is drawn. */
function widthOf(line: XmlNode | undefined): number | undefined {
  if (drawnColour(line) === 'none') return undefined
  const width = numberOf(attr(line, 'w'))
  return width === undefined ? undefined : width / EMU_OF_POINT
}
const EMU_OF_POINT = 12_700

const numberOf = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : Number(text)

/** Whether a point has another mark than its series, or another colour. Some programs repeat the look of the series for a point. */
function isOdd(point: XmlNode, series: XmlNode): boolean {
  const mark = child(point, 'marker')
  const [own, usual] = [attr(child(mark, 'symbol'), 'val'), attr(at(series, 'marker', 'symbol'), 'val')]
  const [dot, dots] = [drawnColour(child(mark, 'spPr')), drawnColour(at(series, 'marker', 'spPr'))]
  // Without a mark of its own, what is said of the point is said of its mark and of the line to it.
  const whole = drawnColour(child(point, 'spPr'))
  const hidden = mark === undefined && whole === 'none'
  return hidden || (own !== undefined && own !== usual) || (dot !== undefined && dot !== dots)
}

/** A name typed in may be kept as a formula that is one text. */
function nameOf(tx: XmlNode | undefined): string {
  const formula = at(tx, 'strRef', 'f')?.text
  if (formula === undefined) return plain(textOf(tx))
  const literal = /^"((?:[^"]|"")*)"$/.exec(formula.trim())?.[1]
  return literal === undefined ? comparableFormula(formula) : plain(literal.replaceAll('""', '"'))
}

const rangeOf = (data: XmlNode | undefined): string =>
  deep(data, 'f')
    .map(({ text }) => comparableFormula(text))
    .join(',') || (storedOf(data).length > 0 ? 'typed-in values' : 'none')

const storedOf = (data: XmlNode | undefined): number[] =>
  deep(data, 'pt').map((point) => Number(child(point, 'v')?.text ?? Number.NaN))

/** A count that is not that of the values, and number formats with more in them than digits: viewers without an engine go by both. */
function oddlyStored(data: XmlNode | undefined): string[] {
  const caches = [...deep(data, 'numCache'), ...deep(data, 'numLit')]
  return caches.flatMap((cache) => {
    const said = attr(child(cache, 'ptCount'), 'val')
    const points = children(cache, 'pt').length
    const code = child(cache, 'formatCode')?.text ?? 'General'
    return [
      ...(said !== undefined && Number(said) < points ? [`${said} of ${points} values`] : []),
      ...(code === 'General' || /^[#0?.,%\s+-]*$/.test(code) ? [] : [code]),
    ]
  })
}
