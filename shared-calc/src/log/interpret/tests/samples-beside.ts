import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { blockBetween } from '../../grid/address.js'
import { mean } from '../../mean.js'
import type { FoundRun } from '../tables/runs.js'
import { isTitledMean } from './mean-runs.js'
import { directionOf } from './test-group.js'

/** A run whose readings are the means of the samples in blocks beside it. */
export interface MeanOfSamples {
  /** With the direction and the place of its samples, which a title stands over. */
  readonly run: FoundRun
  readonly own: FoundRun
  readonly samples: readonly FoundRun[]
}

/** Means are rounded as their samples are: pressures in Pa, flows as a share. */
const ROUNDED = { pressure: 0.11, flow: 0.006 }

/** "Sample 1 | | Sample 2 | | Average | " side by side, each with pressures and flows: the readings are those below "Average". */
export function meansOfSamples(runs: readonly FoundRun[]): MeanOfSamples[] {
  return runs.flatMap((own): MeanOfSamples[] => {
    if (own.view.turned || own.row !== undefined || !isTitledMean(own)) return []
    const samples = runs.filter((one) => one !== own && isBeside(one, own))
    const named = new Set(samples.flatMap((one) => directionOf(one) ?? []))
    // Two blocks that name no direction may be the two directions.
    const isOneRun = named.size === 1 || samples.length > 2 || samples.every(isNegative)
    if (samples.length < 2 || named.size > 1 || !isOneRun || !isMeanOf(own, samples)) return []
    const direction = own.direction ?? samples.find((one) => one.direction)?.direction
    const left = Math.min(own.left, ...samples.map((one) => one.left))
    return [{ run: { ...own, left, ...(direction ? { direction } : {}) }, own, samples }]
  })
}

const isNegative = ({ readings }: FoundRun): boolean => readings.every(({ pressure }) => pressure.value < 0)

/** In the same lines of the same sheet. */
const isBeside = (one: FoundRun, { view, top, readings }: FoundRun): boolean =>
  one.view === view && one.top === top && one.readings.length === readings.length

function isMeanOf({ readings }: FoundRun, samples: readonly FoundRun[]): boolean {
  const meanOf = (of: (run: FoundRun) => number) => mean(samples.map(of)) ?? Number.NaN
  return readings.every((reading, index) => {
    const pressure = meanOf((one) => one.readings[index]?.pressure.value ?? Number.NaN)
    const flow = meanOf((one) => one.readings[index]?.carriers[0]?.value ?? Number.NaN)
    return (
      Math.abs(pressure - reading.pressure.value) <= ROUNDED.pressure &&
      Math.abs(flow / (reading.carriers[0]?.value ?? Number.NaN) - 1) <= ROUNDED.flow
    )
  })
}

/** Names the samples that were left out. */
export const tellSamples = (means: readonly MeanOfSamples[]) =>
  means.map(({ own, samples }) =>
    remarkFinding(
      fileText('log-samples-of-mean', { heading: own.block.pressure.label.text }),
      samples.map(({ view, top, left, bottom, right }) =>
        blockBetween(view.address(top, left), view.address(bottom, right)),
      ),
    ),
  )
