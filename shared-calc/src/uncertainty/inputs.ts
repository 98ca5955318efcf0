import type { TestRecord, UncertaintyInputs } from '../contract/record/index.js'
import { assumed, type Calculation, fromRecord, type Given } from '../engine/index.js'
import type { WorkedRun } from '../evaluation/work/worked-test.js'
import { relativeUncertainty } from '../formulas/uncertainty-air.js'
import { windFromForce, windFromStation } from '../formulas/uncertainty-weather.js'
import type { Method } from '../methods/method.js'
import {
  ASSUMED_HEIGHT_m,
  ASSUMED_WIND_m_s,
  type DefaultedInput,
  defaultUncertainties,
  UNREAD_BAROMETER_Pa,
  UNREAD_HUMIDITY,
} from './defaults.js'
import { fromAccuracy } from './stated-accuracy.js'

/** Default that an input fell back on, with the value taken. */
export interface UsedDefault {
  readonly input: DefaultedInput
  readonly value: number
  readonly source: (typeof defaultUncertainties)[DefaultedInput]['source']
}

const unread = { text: 'common practice, no source: it was not logged', seen: 'common practice' } as const

/** Reads the uncertainty part of a record, falling back on defaults and keeping account of each. */
export class UncertaintyReader {
  readonly defaults = new Map<DefaultedInput, UsedDefault>()

  constructor(
    private readonly calculation: Calculation,
    private readonly record: TestRecord,
    private readonly runs: readonly WorkedRun[],
    private readonly method: Method,
  ) {}

  read(input: DefaultedInput): Given {
    return (
      this.given(input) ??
      fromAccuracy(this.calculation, this.record, this.runs, input) ??
      this.byMethod(input) ??
      this.byDefault(input)
    )
  }

  barometer(): Given {
    const { conditions, building } = this.record
    const fallBack = () => {
      if (conditions.barometricPressure_Pa !== undefined) return this.byDefault('barometricPressure_Pa')
      const { altitudeKnown, nothingKnown } = UNREAD_BAROMETER_Pa
      const value = building.altitude_m === undefined ? nothingKnown : altitudeKnown
      return this.byDefault('barometricPressure_Pa', value)
    }
    return this.given('barometricPressure_Pa') ?? fallBack()
  }

  humidity(side: 'indoor' | 'outdoor'): Given {
    const logged = this.record.conditions[`${side}RelativeHumidity`] !== undefined
    return (
      this.given('relativeHumidity') ??
      (logged ? this.byDefault('relativeHumidity') : this.byDefault('relativeHumidity', UNREAD_HUMIDITY))
    )
  }

  volume(): Given {
    const { volume_m3: volume, volumeUncertainty_m3: absolute } = this.record.building
    const given = this.given('volume_relative')
    if (given || volume === undefined || absolute === undefined)
      return given ?? this.byDefault('volume_relative')
    const id = 'uncertainty.volume'
    const block =
      this.calculation.find(id) ??
      this.calculation.add(id, 'Relative uncertainty of the volume', relativeUncertainty, {
        u_V: fromRecord('building.volumeUncertainty_m3', absolute),
        V: fromRecord('building.volume_m3', volume),
      })
    return block.ref('u')
  }

  /** Wind speed at the house, from the speed or the force logged; else assumed, and rule `assumed-wind` says so. */
  wind(): Given {
    const { windSpeed_m_s: speed, windAt, beaufort } = this.record.conditions
    if (speed !== undefined) {
      const logged = fromRecord('conditions.windSpeed_m_s', speed)
      if (windAt !== 'meteorological') return logged
      return this.calculation
        .add('uncertainty.windAtHouse', 'Wind at the house from wind at the station', windFromStation, {
          U_m: logged,
        })
        .ref('U_w')
    }
    if (beaufort === undefined) return assumed(ASSUMED_WIND_m_s, 'assumed-wind')
    return this.calculation
      .add('uncertainty.windForce', 'Wind speed from wind force', windFromForce, {
        B_f: fromRecord('conditions.beaufort', beaufort),
      })
      .ref('U_w')
  }

  /** Height of the building; else assumed, and rule `assumed-height` says so. */
  height(): Given {
    const { height_m: height } = this.record.building
    return height === undefined
      ? assumed(ASSUMED_HEIGHT_m, 'assumed-height')
      : fromRecord('building.height_m', height)
  }

  private given(input: DefaultedInput): Given | undefined {
    const part: UncertaintyInputs = this.record.uncertainty ?? {}
    const value = part[input]
    return value === undefined ? undefined : fromRecord(`uncertainty.${input}`, value)
  }

  /** The largest error that the method allows its instruments, where its text was read; any spread within it is taken as even. */
  private byMethod(input: DefaultedInput): Given | undefined {
    const { flow_relative, temperature_K } = this.method.limits.accuracy ?? {}
    const limit =
      input === 'flowCalibration_relative'
        ? flow_relative
        : input === 'indoorTemperature_K' || input === 'outdoorTemperature_K'
          ? temperature_K
          : undefined
    if (limit?.source.seen !== 'read') return undefined
    const value = limit.value / Math.sqrt(3)
    this.defaults.set(input, { input, value, source: limit.source })
    return assumed(value, 'assumed-uncertainty')
  }

  private byDefault(input: DefaultedInput, other?: number): Given {
    const { value, source } = defaultUncertainties[input]
    const taken = other ?? value
    this.defaults.set(input, { input, value: taken, source: other === undefined ? source : unread })
    return assumed(taken, 'assumed-uncertainty')
  }
}
