export interface BareFit {
  readonly exponent: number
  readonly coefficient: number
}

/** The peer: least squares through the logarithms of N readings, by hand, in one pass, with nothing around it. */
export function bareFit(pressures_Pa: Float64Array, flows_m3_h: Float64Array): BareFit {
  const count = pressures_Pa.length
  let sx = 0
  let sy = 0
  let sxx = 0
  let sxy = 0
  for (let i = 0; i < count; i += 1) {
    const x = Math.log(pressures_Pa[i] as number)
    const y = Math.log(flows_m3_h[i] as number)
    sx += x
    sy += y
    sxx += x * x
    sxy += x * y
  }
  const exponent = (count * sxy - sx * sy) / (count * sxx - sx * sx)
  return { exponent, coefficient: Math.exp((sy - exponent * sx) / count) }
}
