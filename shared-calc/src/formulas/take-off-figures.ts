import type { Input } from '../engine/index.js'
import { chapter, definition, derived } from './chapter.js'

const geometry = definition('elementary geometry')
const propagated = derived('JCGM 100:2008, 5.1.2: independent errors of the lengths measured')

const column = (symbol: string, name: string, unit = 'm'): Input => ({ symbol, name, unit, rows: true })
const number = column('z', 'number of parts, negative if subtracted', '1')
const length = column('u_l', 'standard uncertainty of each length')

const area = (expression: string) => ({
  symbol: 'A_i',
  name: 'area',
  unit: 'm²',
  expression,
  source: geometry,
})
const uncertain = (expression: string) => ({
  symbol: 'u_A',
  name: 'standard uncertainty of the area',
  unit: 'm²',
  expression,
  source: propagated,
})

/** Areas read off a plan or a schedule. */
export const givenAreas = chapter({
  title: 'Areas as given',
  inputs: [number, column('A', 'area', 'm²'), column('u_f', 'standard uncertainty of the area', 'm²')],
  formulas: [area('z .* A'), uncertain('abs(z) .* u_f')],
})

/** Rectangles (divisor 1) and triangles (2). */
export const straightFigures = chapter({
  title: 'Rectangles and triangles',
  inputs: [
    number,
    length,
    column('l', 'length'),
    column('h', 'height'),
    column('k_s', 'divisor of the shape: rectangle 1, triangle 2', '1'),
  ],
  formulas: [
    area('z .* l .* h ./ k_s'),
    uncertain('abs(z) .* sqrt((h .* u_l) .^ 2 + (l .* u_l) .^ 2) ./ k_s'),
  ],
})

export const trapeziums = chapter({
  title: 'Trapeziums',
  inputs: [number, length, column('l', 'longer side'), column('l_t', 'shorter side'), column('h', 'height')],
  formulas: [area('z .* (l + l_t) .* h/2'), uncertain('abs(z) .* u_l .* sqrt(2*h .^ 2 + (l + l_t) .^ 2)/2')],
})
