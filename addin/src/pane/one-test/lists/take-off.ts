import { countedIn, elementKinds, figureShapes, partUses, solidShapes } from '@draughtbook/shared-calc'
import { choicesOf, type ListColumn, type ListRow, YES_NO } from './list-column.js'

const ADD_OR_EXCLUDE = choicesOf(partUses, { add: 'added', exclude: 'subtracted' })

const excluded = (row: ListRow): boolean => row.use === 'exclude'
const solid = (...shapes: (typeof solidShapes)[number][]) => ({
  when: (row: ListRow) => shapes.some((shape) => shape === row['solid.shape']),
})
const figure = (...shapes: (typeof figureShapes)[number][]) => ({
  when: (row: ListRow) => shapes.some((shape) => shape === row['figure.shape']),
})
const metres = (path: string, label: string): ListColumn => ({ path, label, unit: 'm', kind: 'number' })

const common: readonly ListColumn[] = [
  { path: 'use', label: 'Counts as', kind: 'choice', options: ADD_OR_EXCLUDE, start: 'add' },
  { path: 'reason', label: 'Why subtracted', kind: 'text', when: excluded },
  { path: 'count', label: 'Number', kind: 'whole' },
  metres('lengthUncertainty_m', 'Uncertainty of its lengths'),
]

export const spaceColumns: readonly ListColumn[] = [
  { path: 'name', label: 'Space', kind: 'text' },
  { path: 'storey', label: 'Storey', kind: 'text' },
  {
    path: 'solid.shape',
    label: 'Shape',
    kind: 'choice',
    start: 'box',
    options: choicesOf(solidShapes, { 'floor area': 'floor area × height', wedge: 'wedge (stair)' }),
  },
  { path: 'solid.floorArea_m2', label: 'Floor area', unit: 'm²', kind: 'number', ...solid('floor area') },
  {
    path: 'solid.floorAreaUncertainty_m2',
    label: 'Floor area, uncertainty',
    unit: 'm²',
    kind: 'number',
    ...solid('floor area'),
  },
  {
    ...metres('solid.length_m', 'Length'),
    ...solid('box', 'under slopes', 'wedge', 'pyramid', 'frustum'),
  },
  { ...metres('solid.width_m', 'Width'), ...solid('box', 'under slopes', 'wedge', 'pyramid', 'frustum') },
  {
    ...metres('solid.height_m', 'Clear height'),
    ...solid('box', 'floor area', 'wedge', 'pyramid', 'frustum'),
  },
  { ...metres('solid.kneeHeight_m', 'Knee wall'), ...solid('under slopes') },
  { ...metres('solid.ridgeHeight_m', 'Ridge or flat part'), ...solid('under slopes') },
  { ...metres('solid.flatWidth_m', 'Width of flat part'), ...solid('under slopes') },
  { ...metres('solid.topLength_m', 'Length of top'), ...solid('frustum') },
  { ...metres('solid.topWidth_m', 'Width of top'), ...solid('frustum') },
  {
    path: 'countsIn',
    label: 'Volume',
    kind: 'choice',
    start: 'both',
    options: choicesOf(countedIn, {
      both: 'both volumes',
      net: 'net only',
      'overall internal': 'overall internal only',
    }),
  },
  { path: 'countsAsFloor', label: 'Floor area counts', kind: 'flag', options: YES_NO, start: 'yes' },
  ...common,
]

export const elementColumns: readonly ListColumn[] = [
  { path: 'name', label: 'Element', kind: 'text' },
  {
    path: 'kind',
    label: 'Kind',
    kind: 'choice',
    start: 'wall',
    options: choicesOf(elementKinds),
  },
  {
    path: 'figure.shape',
    label: 'Figure',
    kind: 'choice',
    start: 'rectangle',
    options: choicesOf(figureShapes),
  },
  { path: 'figure.area_m2', label: 'Area', unit: 'm²', kind: 'number', ...figure('area') },
  {
    path: 'figure.areaUncertainty_m2',
    label: 'Area, uncertainty',
    unit: 'm²',
    kind: 'number',
    ...figure('area'),
  },
  { ...metres('figure.length_m', 'Length'), ...figure('rectangle', 'triangle', 'trapezium') },
  { ...metres('figure.topLength_m', 'Shorter side'), ...figure('trapezium') },
  { ...metres('figure.height_m', 'Height'), ...figure('rectangle', 'triangle', 'trapezium') },
  ...common,
]
