import { describe, expect, it } from 'vitest'
import constructed from '../references/constructed-readings.json'
import area from '../references/contam-leakage-area.json'
import point from '../references/contam-one-point.json'
import danwood from '../references/nist-danwood.json'
import palm from '../references/palm-hole-flow.json'
import vector from '../references/reference-vector.json'
import { expectPrinted } from '../support/expect-printed'
import { curveInReferenceAir, expectAsR } from './support/curve-in-reference-air'
import { expectClose } from './support/expect-close'

const massFlows = ({ massFlow_kg_s, density_kg_m3 }: typeof area) =>
  massFlow_kg_s.map((flow) => (Number(flow) / density_kg_m3) * 3600)

describe('leakage curve of the CONTAM leakage-area element (NIST)', () => {
  const curve = curveInReferenceAir(area.dp_Pa, massFlows(area))
  const backwards = curveInReferenceAir(
    area.dp_Pa.map((dp) => -dp),
    massFlows(area),
  )

  it('gives back every tabulated flow to its three printed digits', () => {
    area.massFlow_kg_s.forEach((printed, i) => {
      const flow = curve.run.readings[i]?.fittedFlow_m3_h ?? Number.NaN
      expectPrinted((flow / 3600) * area.density_kg_m3, printed, `flow at ${area.dp_Pa[i]} Pa`)
    })
  })

  it('recovers exponent and area within 0.3 %, the rounding of the printed flows', () => {
    expectClose(curve.run.airFlowExponent.value, Number(area.generator.n), 1e-3, 'exponent')
    const sized = curve.run.ela10.value / Number(area.generator.dischargeCoefficient)
    expectClose(sized, Number(area.generator.areaAt10Pa_cm2), 3e-3, 'area')
  })

  it('agrees with R on every figure and interval', () => expectAsR(curve, area.computed))
  it('is the same for the table’s negative pressures', () => expectAsR(backwards, area.computed))
})

describe('leakage curve of the CONTAM one-point element (NIST)', () => {
  const curve = curveInReferenceAir(
    point.dp_Pa,
    point.massFlow_kg_s.map((flow) => (Number(flow) / point.density_kg_m3) * 3600),
  )

  it('recovers exponent and coefficient within 0.3 %, the rounding of the printed flows', () => {
    expectClose(curve.run.airFlowExponent.value, Number(point.generator.n), 1e-3, 'exponent')
    const coefficient = (curve.run.airFlowCoefficient.value / 3600) * point.density_kg_m3
    expectClose(coefficient, Number(point.generator.massCoefficient_kg_s), 3e-3, 'coefficient')
  })

  it('agrees with R on every figure and interval', () => expectAsR(curve, point.computed))
})

describe('flow through a hole against head (Palm)', () => {
  const flows = palm.time_s.map((time) => palm.volume_ml / time)
  const curve = curveInReferenceAir(palm.height_cm, flows)

  it('gives the published exponent and coefficient', () => {
    expectPrinted(curve.run.airFlowExponent.value, palm.published.exponent)
    expectPrinted(curve.run.airFlowCoefficient.value, palm.published.coefficient)
  })

  it('agrees with R on every figure and interval', () => expectAsR(curve, palm.computed))

  it('prints r² of the logarithms, not the published r² of the flows themselves', () => {
    const { readings, rSquared } = curve.run
    const mean = flows.reduce((sum, flow) => sum + flow, 0) / flows.length
    const left = readings.reduce((sum, r) => sum + (r.envelopeFlow_m3_h - r.fittedFlow_m3_h) ** 2, 0)
    const ofFlows = 1 - left / flows.reduce((sum, flow) => sum + (flow - mean) ** 2, 0)
    expectPrinted(ofFlows, palm.published.rSquaredOfFlows)
    expectPrinted(rSquared ?? Number.NaN, '0.9962')
  })
})

describe('NIST StRD DanielWood', () => {
  const { run } = curveInReferenceAir(danwood.x, danwood.y)

  it('differs from the certified nonlinear fit, as the fit in logarithms must', () => {
    expectClose(run.airFlowCoefficient.value, danwood.computedOnLogarithms.C, 1e-9, 'coefficient')
    expectClose(run.airFlowExponent.value, danwood.computedOnLogarithms.n, 1e-9, 'exponent')
    expect(Math.abs(run.airFlowExponent.value / Number(danwood.certified.b2) - 1)).toBeGreaterThan(0.01)
    expect(Math.abs(run.airFlowCoefficient.value / Number(danwood.certified.b1) - 1)).toBeGreaterThan(0.01)
  })
})

describe('readings constructed for the purpose', () => {
  it('agree with R on every figure and interval', () => {
    expectAsR(curveInReferenceAir(constructed.dp_Pa, constructed.q_m3_h), constructed.computed)
  })
})

describe('reference vector of the calculation reference', () => {
  const zeroFlow = { before: [vector.zeroFlowBefore_Pa], after: [vector.zeroFlowAfter_Pa] }
  const { run, scatter } = curveInReferenceAir(vector.dp_Pa, vector.q_m3_h, zeroFlow)
  const { printed } = vector

  it('is met in all its digits', () => {
    expectPrinted(run.zeroFlowPressure_Pa, '1.0', 'zero-flow pressure')
    expectPrinted(run.airFlowExponent.value, printed.n, 'n')
    expectPrinted(run.airFlowCoefficient.value, printed.C, 'C')
    expectPrinted(run.rSquared ?? Number.NaN, printed.r2, 'r²')
    expectPrinted(scatter.value('S_n'), printed.S_n, 'S_n')
    expectPrinted(scatter.value('S_lnC'), printed.S_lnC, 'S_lnC')
  })

  it.each(['q50', 'q10', 'q4'] as const)('is met at %s with its interval', (quantity) => {
    expectPrinted(run[quantity].value, printed[quantity], quantity)
    const interval = printed[`${quantity}_ci95`]
    expectPrinted(run[quantity].ci95?.[0] ?? Number.NaN, interval[0] ?? '', 'lower end')
    expectPrinted(run[quantity].ci95?.[1] ?? Number.NaN, interval[1] ?? '', 'upper end')
  })
})
