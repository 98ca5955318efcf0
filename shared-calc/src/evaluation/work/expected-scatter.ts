/**
 * How far off the curve readings must lie to be worth repeating: three times the scatter expected of one reading, of its
 * flow (share) and of its pressure (Pa). On a quiet curve smaller ones stand out by chance. Common practice, no source.
 */
export const expectedScatter = { times: 3, flow: 0.005, pressure_Pa: 0.1 } as const
