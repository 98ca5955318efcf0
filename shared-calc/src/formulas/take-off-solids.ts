import type { Input } from '../engine/index.js'
import { chapter, definition, derived } from './chapter.js'

const geometry = definition('elementary geometry')
const propagated = derived('JCGM 100:2008, 5.1.2: independent errors of the lengths measured')

/** Columns that every chapter of solids and figures is given. */
const common: readonly Input[] = [
  { symbol: 'z', name: 'number of parts, negative if subtracted', unit: '1', rows: true },
  { symbol: 'u_l', name: 'standard uncertainty of each length', unit: 'm', rows: true },
]
const column = (symbol: string, name: string, unit = 'm'): Input => ({ symbol, name, unit, rows: true })

const volume = (expression: string) => ({
  symbol: 'V_i',
  name: 'volume',
  unit: 'm³',
  expression,
  source: geometry,
})
const planArea = (expression: string) => ({
  symbol: 'A_i',
  name: 'plan area',
  unit: 'm²',
  expression,
  source: geometry,
})
const uncertain = (symbol: 'u_V' | 'u_A', expression: string) => ({
  symbol,
  name: `standard uncertainty of the ${symbol === 'u_V' ? 'volume' : 'plan area'}`,
  unit: symbol === 'u_V' ? 'm³' : 'm²',
  expression,
  source: propagated,
})

/** Floor areas read off a plan, times their mean clear height. */
export const areaTimesHeight = chapter({
  title: 'Floor area times mean clear height',
  inputs: [
    ...common,
    column('A', 'floor area', 'm²'),
    column('u_f', 'standard uncertainty of the floor area', 'm²'),
    column('h', 'mean clear height'),
  ],
  formulas: [
    volume('z .* A .* h'),
    planArea('z .* A'),
    uncertain('u_V', 'abs(z) .* sqrt((h .* u_f) .^ 2 + (A .* u_l) .^ 2)'),
    uncertain('u_A', 'abs(z) .* u_f'),
  ],
})

/** Boxes (divisor 1), wedges (2) and pyramids (3): length, width and height. */
export const straightSolids = chapter({
  title: 'Boxes, wedges and pyramids',
  inputs: [
    ...common,
    column('l', 'length'),
    column('w', 'width'),
    column('h', 'height'),
    column('k_s', 'divisor of the shape: box 1, wedge 2, pyramid 3', '1'),
  ],
  formulas: [
    volume('z .* l .* w .* h ./ k_s'),
    planArea('z .* l .* w'),
    uncertain(
      'u_V',
      'abs(z) .* sqrt((w .* h .* u_l) .^ 2 + (l .* h .* u_l) .^ 2 + (l .* w .* u_l) .^ 2) ./ k_s',
    ),
    uncertain('u_A', 'abs(z) .* sqrt((w .* u_l) .^ 2 + (l .* u_l) .^ 2)'),
  ],
})

/** Rooms under sloped ceilings: a knee wall, and above it a trapezium up to the flat part. */
export const underSlopes = chapter({
  title: 'Rooms under slopes',
  inputs: [
    ...common,
    column('l', 'length'),
    column('w', 'width'),
    column('h_k', 'height of the knee wall'),
    column('h_r', 'height of the flat part or of the ridge'),
    column('w_f', 'width of the flat part'),
  ],
  formulas: [
    {
      symbol: 'S_i',
      name: 'cross-section',
      unit: 'm²',
      expression: 'w .* h_k + (w + w_f) .* (h_r - h_k)/2',
      source: geometry,
    },
    volume('z .* l .* S_i'),
    planArea('z .* l .* w'),
    uncertain(
      'u_V',
      'abs(z) .* u_l .* sqrt(S_i .^ 2 + (l .* (h_k + h_r)/2) .^ 2 + (l .* (h_r - h_k)/2) .^ 2 + (l .* (w - w_f)/2) .^ 2 + (l .* (w + w_f)/2) .^ 2)',
    ),
    uncertain('u_A', 'abs(z) .* sqrt((w .* u_l) .^ 2 + (l .* u_l) .^ 2)'),
  ],
})

/** Bodies sloped on all sides up to a smaller flat top, by the prismatoid formula. */
export const frustums = chapter({
  title: 'Frustums',
  inputs: [
    ...common,
    column('l', 'length'),
    column('w', 'width'),
    column('l_t', 'length of the top'),
    column('w_t', 'width of the top'),
    column('h', 'height'),
  ],
  formulas: [
    {
      symbol: 'B_i',
      name: 'base area + 4 × middle area + top area',
      unit: 'm²',
      expression: 'l .* w + (l + l_t) .* (w + w_t) + l_t .* w_t',
      source: definition('prismatoid formula'),
    },
    volume('z .* h .* B_i/6'),
    planArea('z .* l .* w'),
    uncertain(
      'u_V',
      'abs(z) .* u_l .* sqrt(B_i .^ 2 + (h .* (2*w + w_t)) .^ 2 + (h .* (2*l + l_t)) .^ 2 + (h .* (2*w_t + w)) .^ 2 + (h .* (2*l_t + l)) .^ 2)/6',
    ),
    uncertain('u_A', 'abs(z) .* sqrt((w .* u_l) .^ 2 + (l .* u_l) .^ 2)'),
  ],
})
