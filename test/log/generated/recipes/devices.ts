import { recipe } from '../recipe.js'

/** Flows that must be worked out: plates with coefficients, two fans. */
export const devices = [
  recipe('plates on another sheet', { table: ['number', 'pressure', 'plate', 'device'], structure: 'below' }),
  recipe('plates, side by side', { table: ['number', 'pressure', 'plate', 'device'], words: 'house' }),
  recipe('plates, german', {
    table: ['number', 'pressure', 'plate', 'device'],
    words: 'protocol',
    structure: 'below',
  }),
  recipe('plates and the flow worked out', { table: ['number', 'pressure', 'plate', 'device', 'flow'] }),
  recipe('two fans and the total', {
    table: ['number', 'pressure', 'fan1', 'fan2', 'total'],
    house: { volume_m3: 2400 },
  }),
  recipe('two fans and the total, below', {
    table: ['number', 'pressure', 'fan1', 'fan2', 'total'],
    structure: 'below',
    house: { volume_m3: 3100 },
  }),
  recipe('two fans without a total', {
    table: ['number', 'pressure', 'fan1', 'fan2'],
    house: { volume_m3: 2700 },
    mayAsk: ['which flow'],
  }),
]
