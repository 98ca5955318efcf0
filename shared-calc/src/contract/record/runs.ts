import { z } from 'zod'
import { anyOf, runDirections } from './choices.js'
import { numberField } from './number-field.js'
import { nameField } from './text-field.js'

export const Direction = z.enum(runDirections, { error: `direction must be ${anyOf(runDirections)}` })
export type Direction = z.infer<typeof Direction>

const pressure = numberField({ term: 'pressure difference', unit: 'Pa' }, -1000, 1000)
const zeroFlow = z
  .array(numberField({ term: 'zero-flow pressure difference', unit: 'Pa' }, -200, 200))
  .max(1000)

const oneDevice = {
  flow_m3_h: numberField({ term: 'air flow', unit: 'm³/h' }, 1e-6, 1e6).optional(),
  devicePressure_Pa: numberField({ term: 'device pressure', unit: 'Pa' }, -10_000, 10_000).optional(),
  range: nameField('range of the flow device').optional(),
}

/** What one of several devices running together shows: its flow, or its pressure with the range that gives the flow. */
export const DeviceReading = z.strictObject(oneDevice).superRefine(refuseUnclearFlow)
export type DeviceReading = z.infer<typeof DeviceReading>

/** One station: pressure difference across the envelope with the flow as indicated, or with the device's own pressure. */
export const Reading = z
  .strictObject({
    pressure_Pa: pressure,
    ...oneDevice,
    /**
     * Standard uncertainties (k = 1) of averages over a raw series, autocorrelation allowed for, record@2; they are in
     * place of the scatter that is else expected of a reading.
     */
    pressureUncertainty_Pa: numberField(
      { term: 'standard uncertainty of the averaged pressure difference', unit: 'Pa' },
      1e-9,
      1000,
    ).optional(),
    flowUncertainty_m3_h: numberField(
      { term: 'standard uncertainty of the averaged air flow', unit: 'm³/h' },
      1e-9,
      1e6,
    ).optional(),
    devicePressureUncertainty_Pa: numberField(
      { term: 'standard uncertainty of the averaged device pressure', unit: 'Pa' },
      1e-9,
      10_000,
    ).optional(),
    /** Several devices running together, record@2: their flows add. */
    devices: z
      .array(DeviceReading)
      .min(2, { error: 'enter at least two devices, or give the flow directly' })
      .max(20)
      .optional(),
  })
  .superRefine((reading, context) => {
    refuseUncertaintyOfNothing(reading, context)
    if (reading.devices === undefined) refuseUnclearFlow(reading, context)
    else if (reading.flow_m3_h !== undefined || reading.devicePressure_Pa !== undefined)
      context.addIssue({
        code: 'custom',
        path: ['devices'],
        message: 'reading has both a flow of its own and a list of devices; keep one of the two',
      })
  })
export type Reading = z.infer<typeof Reading>

/**
 * Which air the typed flows of a run are for: the air passing the device, or air at the device's reference density. A
 * device that does not know the density of the air shows the second.
 */
export const FlowStatedAt = z.enum(['device air', 'reference air'], {
  error: 'flowStatedAt must be "device air" or "reference air"',
})
export type FlowStatedAt = z.infer<typeof FlowStatedAt>

/** Pressure differences of several places inside, read while the fan was left as it was. */
export const Evenness = z.strictObject({
  testPressure_Pa: numberField(
    { term: 'pressure difference of the test while the places were read', unit: 'Pa' },
    -1000,
    1000,
  ).refine((value) => value !== 0, { error: 'pressure difference of the test is 0 Pa: nothing to compare' }),
  places: z
    .array(
      z.strictObject({
        place: nameField('place inside the building'),
        pressure_Pa: numberField(
          { term: 'pressure difference of the place to outdoors', unit: 'Pa' },
          -1000,
          1000,
        ),
      }),
    )
    .min(2, { error: 'the inside pressure comparison needs the pressure differences of at least two places' })
    .max(100),
})
export type Evenness = z.infer<typeof Evenness>

/**
 * Most readings of single devices in a run. Each is a line of the workbook with formulas of its own; with these the largest
 * record still takes no more time and memory than the service gives it.
 */
const MOST_OF_DEVICES = 1000

export const Run = z
  .strictObject({
    direction: Direction,
    /** From record@3 on. */
    flowStatedAt: FlowStatedAt.optional(),
    averagingTime_s: numberField({ term: 'averaging time', unit: 's' }, 0, 3600).optional(),
    zeroFlowBefore_Pa: zeroFlow.optional(),
    zeroFlowAfter_Pa: zeroFlow.optional(),
    readings: z.array(Reading).min(1, { error: 'the run has no readings; enter them' }).max(1000),
    /** From record@3 on. */
    evenness: z.array(Evenness).max(100).optional(),
  })
  .superRefine(({ readings }, context) => {
    const ofDevices = readings.reduce((sum, { devices }) => sum + (devices?.length ?? 0), 0)
    if (ofDevices > MOST_OF_DEVICES)
      context.addIssue({
        code: 'custom',
        path: ['readings'],
        message: `the run has ${ofDevices} readings of single devices; at most ${MOST_OF_DEVICES} can be evaluated. Average over longer times, or give the sum of the flows`,
      })
  })
export type Run = z.infer<typeof Run>

/** Refuses a reading that has no flow, or two, or a device pressure from which none can be worked out. */
function refuseUnclearFlow(
  reading: {
    flow_m3_h?: number | undefined
    devicePressure_Pa?: number | undefined
    range?: string | undefined
  },
  context: z.RefinementCtx,
): void {
  const { flow_m3_h: flow, devicePressure_Pa: device, range } = reading
  if (flow === undefined && device === undefined)
    context.addIssue({
      code: 'custom',
      path: ['flow_m3_h'],
      message: 'reading has neither an air flow nor a device pressure; enter one of them',
    })
  if (flow !== undefined && device !== undefined)
    context.addIssue({
      code: 'custom',
      path: ['devicePressure_Pa'],
      message: 'reading has both an air flow and a device pressure; keep the one that was measured',
    })
  if (device === 0)
    context.addIssue({
      code: 'custom',
      path: ['devicePressure_Pa'],
      message: 'a device pressure of 0 Pa cannot be used',
    })
  if (device !== undefined && range === undefined)
    context.addIssue({
      code: 'custom',
      path: ['range'],
      message: 'a device pressure needs the range of the flow device',
    })
}

/** Refuses the uncertainty of an average that the reading does not hold. */
function refuseUncertaintyOfNothing(
  reading: {
    flow_m3_h?: number | undefined
    devicePressure_Pa?: number | undefined
    flowUncertainty_m3_h?: number | undefined
    devicePressureUncertainty_Pa?: number | undefined
  },
  context: z.RefinementCtx,
): void {
  if (reading.flowUncertainty_m3_h !== undefined && reading.flow_m3_h === undefined)
    context.addIssue({
      code: 'custom',
      path: ['flowUncertainty_m3_h'],
      message: 'reading has an uncertainty of the air flow but no air flow',
    })
  if (reading.devicePressureUncertainty_Pa !== undefined && reading.devicePressure_Pa === undefined)
    context.addIssue({
      code: 'custom',
      path: ['devicePressureUncertainty_Pa'],
      message: 'reading has an uncertainty of the device pressure but no device pressure',
    })
}
