import type { XmlNode } from './xml-tree.js'

/**
 * What a part may hold: elements of our own parts and those that programs add when they save, from ECMA-376 part 1 and from files
 * saved by several programs. Whatever is not listed is said: a reader may show it, and no comparison of ours would see it.
 */
const words = (text: string): ReadonlySet<string> => new Set(text.trim().split(/\s+/))

/** CT_Worksheet (18.3.1.99), as far as it is compared or changes nothing that is seen. */
const OF_SHEET =
  words(`sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges
  autoFilter mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup
  headerFooter rowBreaks colBreaks ignoredErrors drawing legacyDrawing picture extLst`)

/** CT_Workbook (18.2.27) likewise. */
const OF_WORKBOOK =
  words(`fileVersion workbookPr workbookProtection bookViews sheets externalReferences definedNames calcPr
  webPublishing fileRecoveryPr absPath extLst`)

/** CT_Stylesheet (18.8.39). */
const OF_STYLES = words(
  'numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst',
)

/** Of a scatter or column chart with its texts, lines and marks (21.2, 20.1), and what programs add to it. */
const OF_CHART =
  words(`chartSpace date1904 lang roundedCorners style clrMapOvr chart title autoTitleDeleted plotArea plotVisOnly
  dispBlanksAs showDLblsOverMax legend legendPos legendEntry overlay layout manualLayout layoutTarget xMode yMode wMode hMode x y w h
  scatterChart scatterStyle barChart barDir grouping gapWidth overlap catAx cat val auto lblAlgn lblOffset noMultiLvlLbl varyColors ser idx order tx xVal yVal smooth marker symbol size dPt invertIfNegative bubble3D dLbls dLbl
  dLblPos showLegendKey showVal showCatName showSerName showPercent showBubbleSize showLeaderLines leaderLines separator numFmt numRef
  numLit numCache strRef strCache f formatCode ptCount pt v valAx axId axPos crossAx crosses crossesAt crossBetween scaling orientation
  logBase min max delete majorGridlines minorGridlines majorTickMark minorTickMark tickLblPos majorUnit minorUnit spPr txPr rich
  printSettings headerFooter pageMargins pageSetup extLst ext uniqueId dataDisplayOptions16 dispNaAsBlank gostyle
  bodyPr lstStyle p pPr defRPr rPr endParaRPr r t latin ea cs sym normAutofit spAutoFit noAutofit
  ln solidFill noFill srgbClr schemeClr sysClr prstClr lumMod lumOff tint shade alpha satMod prstDash round miter bevel headEnd tailEnd
  effectLst sp3d scene3d camera lightRig`)

/** Of these a part of a chart holds several. */
const OFTEN_IN_CHART = words('ser dPt dLbl pt valAx catAx axId legendEntry ext p r')

/** Elements straight below the root that are not usual there, or stand there twice where one is read. In words; `none`. */
function unusual(root: XmlNode | undefined, usual: ReadonlySet<string>, repeated = ''): string {
  const seen = new Set<string>()
  const odd = new Set<string>()
  for (const { name } of root?.children ?? []) {
    // Extensions outside the standard's namespaces keep their prefix: programs note there who saved the file, and how.
    if (!usual.has(name) && !name.includes(':')) odd.add(name)
    // Extensions are read wherever they stand.
    if (seen.has(name) && name !== repeated && name !== 'extLst') odd.add(`${name} twice`)
    seen.add(name)
  }
  return [...odd].sort().join(', ') || 'none'
}

export const unusualInSheet = (root: XmlNode | undefined): string =>
  unusual(root, OF_SHEET, 'conditionalFormatting')
export const unusualInWorkbook = (root: XmlNode | undefined): string => unusual(root, OF_WORKBOOK)
/** Extensions of a sheet (18.2.10) that are compared, or change nothing that is seen. */
const OF_EXTENSIONS = words('conditionalFormattings sparklineGroups dataValidations ignoredErrors')

/** What the extensions of a sheet hold beside those. In words; `none`. */
export const unusualInExtensions = (extensions: XmlNode | undefined): string =>
  [
    ...new Set(
      (extensions?.children ?? [])
        .flatMap((ext) => ext.children)
        .map(({ name }) => name.slice(name.lastIndexOf(':') + 1))
        .filter((name) => !OF_EXTENSIONS.has(name)),
    ),
  ]
    .sort()
    .join(', ') || 'none'

/** Lists of what cells take their looks from. */
const LOOKS = words('fonts fills borders cellStyleXfs cellXfs dxfs')

export const unusualInStyles = (root: XmlNode | undefined): string => {
  const looks = (root?.children ?? [])
    .filter(({ name }) => LOOKS.has(name))
    .flatMap(({ children }) => children)
  const repeated = looks.flatMap((one) => twiceIn(one, (name) => name === 'stop' || name === 'ext'))
  return repeated.length > 0 ? [...new Set(repeated)].join(', ') : unusual(root, OF_STYLES)
}

/** Names that stand twice straight below an element, or below those in it: programs may take the first or the last. */
function twiceIn(node: XmlNode, may: (name: string) => boolean = () => false): string[] {
  const seen = new Set<string>()
  return node.children.flatMap((one) => {
    const again = seen.has(one.name) && !may(one.name)
    seen.add(one.name)
    return [...(again ? [`${one.name} twice`] : []), ...twiceIn(one, may)]
  })
}

/** Elements anywhere in a chart that none of ours has and no program adds. In words; `none`. */
export function unusualInChart(root: XmlNode | undefined): string {
  const odd = new Set(root ? twiceIn(root, (name) => OFTEN_IN_CHART.has(name) || name.includes(':')) : [])
  const look = (node: XmlNode): void => {
    for (const one of node.children) {
      if (!OF_CHART.has(one.name) && !one.name.includes(':')) odd.add(one.name)
      look(one)
    }
  }
  if (root) look(root)
  return [...odd].sort().join(', ') || 'none'
}
