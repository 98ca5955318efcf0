/** The few functions of psychrolib (MIT) that serve as oracle; the package ships no types. SI units once set. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number
    SetUnitSystem(system: number): void
    /** Dry-bulb temperature °C, humidity ratio kg/kg, pressure Pa → relative humidity, 0 to 1. */
    GetRelHumFromHumRatio(temperature: number, ratio: number, pressure: number): number
    /** Dry-bulb temperature °C, relative humidity 0 to 1, pressure Pa → humidity ratio kg/kg. */
    GetHumRatioFromRelHum(temperature: number, humidity: number, pressure: number): number
    /** Dry-bulb temperature °C, humidity ratio kg/kg, pressure Pa → density kg/m³. */
    GetMoistAirDensity(temperature: number, ratio: number, pressure: number): number
  }
  export default psychrolib
}
