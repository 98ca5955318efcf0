import { SaxesParser } from 'saxes'

// Child elements in the order of the schemas of ECMA-376 Part 1 (21.2.2 charts, 20.1 DrawingML, 20.5.2 spreadsheet
// drawing, 18.3.1.99 worksheet), retyped from memory for the elements this project may write, and seen to agree with
// the order in which openpyxl 3.1 writes the same charts back.
const AXIS = `axId scaling delete axPos majorGridlines minorGridlines title numFmt majorTickMark minorTickMark tickLblPos
  spPr txPr crossAx crosses`
const SERIES = 'idx order tx spPr'
const ORDER: Record<string, string> = {
  chartSpace: 'date1904 lang roundedCorners chart spPr txPr printSettings',
  chart: 'title autoTitleDeleted plotArea legend plotVisOnly dispBlanksAs',
  title: 'tx layout overlay spPr txPr',
  plotArea: 'layout barChart lineChart scatterChart valAx catAx dateAx valAx spPr',
  scatterChart: 'scatterStyle varyColors ser dLbls axId',
  lineChart: 'grouping varyColors ser dLbls dropLines hiLowLines upDownBars marker smooth axId',
  barChart: 'barDir grouping varyColors ser dLbls gapWidth overlap serLines axId',
  'scatterChart/ser': `${SERIES} marker dPt dLbls trendline errBars xVal yVal smooth`,
  'lineChart/ser': `${SERIES} marker dPt dLbls trendline errBars cat val smooth`,
  'barChart/ser': `${SERIES} invertIfNegative pictureOptions dPt dLbls trendline errBars cat val shape`,
  marker: 'symbol size spPr',
  numRef: 'f numCache',
  strRef: 'f strCache',
  numCache: 'formatCode ptCount pt',
  strCache: 'ptCount pt',
  valAx: `${AXIS} crossBetween majorUnit minorUnit dispUnits`,
  catAx: `${AXIS} auto lblAlgn lblOffset noMultiLvlLbl`,
  dateAx: `${AXIS} auto lblOffset baseTimeUnit majorUnit majorTimeUnit`,
  scaling: 'logBase orientation max min',
  legend: 'legendPos legendEntry layout overlay spPr txPr',
  legendEntry: 'idx delete txPr',
  spPr: 'xfrm custGeom prstGeom noFill solidFill gradFill blipFill pattFill ln',
  ln: 'noFill solidFill gradFill pattFill prstDash custDash round bevel miter',
  pattFill: 'fgClr bgClr',
  txPr: 'bodyPr lstStyle p',
  rich: 'bodyPr lstStyle p',
  p: 'pPr r endParaRPr',
  r: 'rPr t',
  twoCellAnchor: 'from to sp grpSp graphicFrame cxnSp pic clientData',
  from: 'col colOff row rowOff',
  to: 'col colOff row rowOff',
  graphicFrame: 'nvGraphicFramePr xfrm graphic',
  nvGraphicFramePr: 'cNvPr cNvGraphicFramePr',
  worksheet: `sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges
    scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting
    dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties
    cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF picture oleObjects controls
    webPublishItems tableParts extLst`,
}

/** Elements whose children stand in another order than the schema's, or are not in it, as readable lines. */
export function orderProblems(xml: string): string[] {
  const problems: string[] = []
  const open: { name: string; at: number }[] = []
  const parser = new SaxesParser({ xmlns: true })
  parser.on('opentag', ({ local }) => {
    const parent = open.at(-1)
    const order = parent && (ORDER[`${open.at(-2)?.name}/${parent.name}`] ?? ORDER[parent.name])?.split(/\s+/)
    if (parent && order) {
      const at = order.indexOf(local, parent.at)
      if (at < 0) problems.push(`${open.map(({ name }) => name).join('/')}: ${local} is out of place`)
      else parent.at = at
    }
    open.push({ name: local, at: 0 })
  })
  parser.on('closetag', () => open.pop())
  parser.write(xml).close()
  return problems
}
