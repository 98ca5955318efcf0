import {
  capital,
  curveFigures,
  type FigureDefinition,
  nameWithSymbol,
  results,
  unitText,
} from '@draughtbook/shared-calc'

/** One argument as Excel's function wizard shows it. */
export interface Argument {
  name: string
  description: string
  matrix?: boolean
  optional?: boolean
}

/** One spreadsheet function. `spills`: the result fills several cells. */
export interface FunctionRow {
  id: string
  description: string
  parameters: readonly Argument[]
  spills?: boolean
}

const pressures: Argument = {
  name: 'pressures',
  description: 'Induced pressure differences in Pa, one per reading (zero-flow pressure already subtracted)',
  matrix: true,
}
const flows: Argument = {
  name: 'flows',
  description: 'Air flows through the envelope in m³/h at reference air density, one per reading',
  matrix: true,
}
const at = (standard: string): Argument => ({
  name: 'at',
  description: `Reference pressure difference in Pa; ${standard} if left out`,
  optional: true,
})

const FROM_CURVE = 'from the leakage curve through the readings'

/** A figure of the catalogue with its unit: `Air change rate in 1/h`. */
function inItsUnit({ name, quantity = name, unit }: FigureDefinition & { quantity?: string }): string {
  const printed = unitText(unit)
  return printed === '' ? capital(quantity) : `${capital(quantity)} in ${printed}`
}

/**
 * Every spreadsheet function, once: functions.json, the manifests' namespace, the code behind the names and their
 * tests all follow from this table. Names are words and never look like a cell address.
 */
export const functionTable = [
  {
    id: 'AIRCHANGERATE',
    description: `${inItsUnit(results.n50)} at a pressure difference, ${FROM_CURVE}`,
    parameters: [pressures, flows, { name: 'volume', description: 'Internal volume in m³' }, at('50')],
  },
  {
    id: 'LEAKAGEPERENVELOPE',
    description: `${inItsUnit(results.qE50)} at a pressure difference`,
    parameters: [pressures, flows, { name: 'area', description: 'Envelope area in m²' }, at('50')],
  },
  {
    id: 'LEAKAGEPERFLOOR',
    description: `${inItsUnit(results.qF50)} at a pressure difference`,
    parameters: [pressures, flows, { name: 'area', description: 'Floor area in m²' }, at('50')],
  },
  {
    id: 'LEAKAGECOEFFICIENT',
    description: inItsUnit(curveFigures.airLeakageCoefficient),
    parameters: [pressures, flows],
  },
  {
    id: 'FLOWEXPONENT',
    description: `${inItsUnit(curveFigures.airFlowExponent)} with the ends of its 95 % interval (fit scatter only), in three cells`,
    parameters: [pressures, flows],
    spills: true,
  },
  {
    id: 'FLOWATPRESSURE',
    description: `${inItsUnit(results.q50)} at a pressure difference, ${FROM_CURVE}`,
    parameters: [pressures, flows, { name: 'at', description: 'Pressure difference in Pa' }],
  },
  {
    id: 'LEAKAGEAREA',
    description: `${inItsUnit(results.ela4)} at a pressure difference`,
    parameters: [pressures, flows, at('4')],
  },
  {
    id: 'DETERMINATION',
    description: `${capital(nameWithSymbol(curveFigures.rSquared))} of the leakage curve`,
    parameters: [pressures, flows],
  },
  {
    id: 'LEAKAGECURVE',
    description:
      'The leakage curve as a table: each quantity with its value, the ends of its 95 % interval (fit scatter only) and its unit',
    parameters: [pressures, flows],
    spills: true,
  },
  {
    id: 'AIRDENSITY',
    description: 'Density of moist air in kg/m³',
    parameters: [
      { name: 'temperature', description: 'Air temperature in °C' },
      { name: 'humidity', description: 'Relative humidity from 0 to 1' },
      { name: 'pressure', description: 'Barometric pressure in Pa' },
    ],
  },
] as const satisfies readonly FunctionRow[]

export type FunctionId = (typeof functionTable)[number]['id']

/** Word before the dot in a cell: =DRAUGHT.AIRCHANGERATE(…). It is part of users' workbooks and never changes. */
export const NAMESPACE = 'DRAUGHT'
