import { listed } from '../../catalogue/words.js'
import { didYouMean, nearest } from '../../contract/nearest.js'
import { type LogProblem, problem } from '../problem.js'
import type { Answers } from './interpretation.js'

/** What may be answered beside the questions asked: fields of the record that a log may lack. */
const FIELDS = [
  'test',
  'flow.unit',
  'pressure.unit',
  'volume.unit',
  'temperature.unit',
  'barometer.unit',
  'device.unit',
  'device.range',
  'device.table',
  'pressure.column',
  'flow.column',
  'pressure.sign',
  'zeroFlow.sign',
  'zeroFlow.labels',
  'table.columns',
  'fans',
  'flowStatedAt',
  'readings.grey',
  'readings.remarked',
  'readings.copied',
  'runs[0].direction',
  'runs[1].direction',
  'runs[0].zeroFlow',
  'runs[1].zeroFlow',
  'decimal',
  'building.name',
  'building.site',
  'building.address',
  'building.volume_m3',
  'building.volumeBasis',
  'building.volumeUncertainty_m3',
  'building.envelopeArea_m2',
  'building.lossArea_m2',
  'building.floorArea_m2',
  'building.height_m',
  'building.altitude_m',
  'building.largeBuilding',
  'test.id',
  'test.date',
  'test.stage',
  'test.tester',
  'test.organisation',
  'test.client',
  'test.method',
  'test.preparation',
  'test.purpose',
  'test.notes',
  'conditions.indoorTemperature_C',
  'conditions.outdoorTemperature_C',
  'conditions.barometricPressure_Pa',
  'conditions.indoorRelativeHumidity',
  'conditions.outdoorRelativeHumidity',
  'conditions.windSpeed_m_s',
  'conditions.windAt',
  'conditions.beaufort',
  'target.preset',
] as const

/** Short names for fields often answered, as people type them. */
const SHORT: Record<string, string> = {
  volume: 'building.volume_m3',
  name: 'building.name',
  date: 'test.date',
  method: 'test.method',
  stage: 'test.stage',
  target: 'target.preset',
  'indoor temperature': 'conditions.indoorTemperature_C',
  'outdoor temperature': 'conditions.outdoorTemperature_C',
}

/** Path of a field that may be typed by a short name. */
export const wholePath = (path: string): string =>
  Object.hasOwn(SHORT, path) ? (SHORT[path] as string) : path

/** Answers with their full paths, and a problem for each path that is none, naming the nearest that is. */
export function readAnswers(given: Answers): { answers: Answers; problems: LogProblem[] } {
  const answers: Record<string, string> = {}
  const problems: LogProblem[] = []
  for (const [path, value] of Object.entries(given)) {
    const full = wholePath(path)
    if ((FIELDS as readonly string[]).includes(full)) answers[full] = value
    else
      problems.push(
        problem(
          'layout-invalid',
          `there is nothing called "${path.slice(0, 80)}" to set${didYouMean(nearest(path, FIELDS, spellings)) || ofSamePart(path)}`,
          { path: path.slice(0, 80) },
        ),
      )
  }
  return { answers, problems }
}

/** The names there are in the part that a path begins with. */
function ofSamePart(path: string): string {
  const [part = ''] = path.split('.')
  const known = FIELDS.filter((field) => field.startsWith(`${part}.`))
  return known.length > 0 ? `. In "${part}" there ${known.length === 1 ? 'is' : 'are'} ${listed(known)}` : ''
}

/** A field by its whole path, its last part, and that without its unit. */
function spellings(field: string): readonly string[] {
  const last = field.split('.').at(-1) ?? field
  return [field, last.replace(/_[\s\S]*$/, ''), last]
}
