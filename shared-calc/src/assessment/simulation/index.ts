export { type Random, randomFrom } from './random.js'
export { SIMULATION_DRAWS, type SimulatedFigure, type SimulationOptions, simulate } from './simulate.js'
