/** What one consultancy writes on its log. Every language and firm has its own. */
export interface Words {
  title: string
  building: string
  address: string
  date: string
  tester: string
  volume: string
  envelope: string
  floor: string
  height: string
  indoor: string
  outdoor: string
  barometer: string
  wind: string
  depressurisation: string
  pressurisation: string
  /** A label of a block in which `before` and `after` are said beside. */
  zeroFlow: string
  before: string
  after: string
  number: string
  pressure: string
  flow: string
  devicePressure: string
  plate: string
  target: string
  induced: string
  corrected: string
  total: string
  remark: string
  average: string
  highest: string
  direction: string
  test: string
  retest: string
  run: string
  role: string
  reading: string
  /** Letters of another alphabet or accents, a decimal comma: what the firm's country writes. */
  decimalComma: boolean
  /** How a day is written as text. */
  dayText: (year: number, month: number, day: number) => string
  notes: readonly string[]
}

export const two = (value: number) => String(value).padStart(2, '0')
export const dayFirst = (mark: string) => (year: number, month: number, day: number) =>
  `${two(day)}${mark}${two(month)}${mark}${year}`
