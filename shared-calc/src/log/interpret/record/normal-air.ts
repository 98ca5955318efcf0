import { Calculation } from '../../../engine/index.js'
import { normalFlow } from '../../../formulas/normal-flow.js'

/** Reference air of the standards, °C. Source: ISO 9972:2015 (value from memory). */
const REFERENCE_C = 20

/**
 * A flow stated for air at 0 °C and 101 325 Pa as the flow of the same air at 20 °C.
 * @param flow - m³/h
 * @returns the flow in m³/h, and by what it was multiplied
 */
export function fromNormalAir(flow: number): { flow: number; factor: number } {
  const block = new Calculation().add('normal', normalFlow.title, normalFlow, {
    q_N: { value: flow, origin: { kind: 'rule', reason: 'flow of the log' } },
    theta_r: { value: REFERENCE_C, origin: { kind: 'rule', reason: 'reference air' } },
  })
  return { flow: block.value('q_r'), factor: block.value('f_N') }
}
