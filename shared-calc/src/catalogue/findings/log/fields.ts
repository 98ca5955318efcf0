import { capital, dayInWords, listed, quoted } from '../../words.js'
import type { RemarkTexts } from '../finding-text.js'
import { saying } from '../remark.js'

const checkDate = 'Enter the date of the test. On the command line: --set date=YYYY-MM-DD.'

/** A logged number as it is in the log. */
const logged = (value: number): string => String(value).replace('-', '−')

type LimitedQuantity = 'n50' | 'qE50' | 'qF50'
const limitIn = (quantity: LimitedQuantity): string => (quantity === 'n50' ? '1/h' : 'm³/(h·m²)')

/** How single values of a log that no layout describes were understood. */
export const fieldTexts = {
  'log-answer': {
    severity: 'note',
    message: ({ field, answer }: { field: string; answer: string }) =>
      `${capital(field)}: your answer ${quoted(answer)} was used.`,
  },
  'log-answer/instead': {
    severity: 'caution',
    message: ({ field, answer, before }: { field: string; answer: string; before: string }) =>
      `${capital(field)}: your answer ${quoted(answer)} was used instead of ${before}.`,
    remedy: 'Check which is right, and correct the log where it is wrong.',
  },
  'log-name-of-file': {
    severity: 'note',
    message: ({ name, of }: { name: string; of: 'test' | 'file' }) =>
      `The log does not name the building. The name of the ${of}, ${quoted(name)}, was used.`,
  },
  'log-date-of-file/only': {
    severity: 'caution',
    message: ({ date }: { date: string }) =>
      `No date in the log is labelled as the date of the test. The only date in the log was used: ${dayInWords(date)}.`,
    remedy: checkDate,
  },
  'log-date-of-file': {
    severity: 'caution',
    message: ({ date }: { date: string }) =>
      `The log has no date. The day the file was last changed was used: ${dayInWords(date)}.`,
    remedy: checkDate,
  },
  'log-date-after-file': {
    severity: 'caution',
    message: ({ date, changed }: { date: string; changed: string }) =>
      `The log gives ${dayInWords(date)} as the date of the test, but the file was last changed on ${dayInWords(changed)}.`,
    remedy: checkDate,
  },
  'log-method/named': {
    severity: 'note',
    message: ({ method }: { method: string }) => `The log names the test method: ${method}.`,
  },
  'log-target': {
    severity: 'note',
    message: ({ quantity, limit }: { quantity: LimitedQuantity; limit: number }) =>
      `The log states a target: ${quantity} of ${Number(limit.toFixed(4))} ${limitIn(quantity)} at most. It was taken.`,
    remedy: 'To use another, choose the target. On the command line: --target.',
  },
  'log-target/several': {
    severity: 'caution',
    message: 'The log states targets that differ. None of them was taken.',
    remedy: 'Choose the target. On the command line: --target.',
  },
  'log-target/no-area': {
    severity: 'caution',
    message: ({ quantity }: { quantity: LimitedQuantity }) =>
      `The log states a target for ${quantity}, but not the ${quantity === 'qF50' ? 'floor area' : 'envelope area'} that it is for. The target was not taken.`,
    remedy: 'Enter the area in the log, and read the log again.',
  },
  'log-method/assumed': {
    severity: 'note',
    message: 'The log does not name a test method. ISO 9972:2015 was used.',
    remedy: 'To use another, choose the test method. On the command line: --method.',
  },
  'log-volume-of-sides': {
    severity: 'caution',
    message: ({ text, amount, unit }: { text: string; amount: number; unit: string }) =>
      `The internal volume is ${amount} ${unit}, the product of ${quoted(text)}.`,
    remedy: 'Check that these are the inside lengths of the whole building.',
  },
  'log-left-out/no-unit': {
    severity: 'caution',
    message: ({ label }: { label: string }) => `${quoted(label)} was left out, because it has no unit.`,
    remedy: 'Write its unit in the label or next to the number.',
  },
  'log-left-out/areas': {
    severity: 'note',
    message: ({ labels, more }: { labels: readonly string[]; more: boolean }) =>
      labels.length === 1 && !more
        ? `${quoted(labels[0] ?? '')} was not used: its label does not say whether it is the floor area or the envelope area.`
        : `${listed([...labels.map(quoted), ...(more ? ['others'] : [])])} were not used: their labels do not say whether they are floor areas or envelope areas.`,
  },
  'log-left-out/volume': {
    severity: 'note',
    message: ({
      label,
      value,
      unit,
      why,
    }: {
      label: string
      value: number
      unit: string | undefined
      why: string
    }) =>
      `The volume ${quoted(label)}, ${value}${unit === undefined ? '' : ` ${unit}`}, was not used: ${why}.`,
  },
  'log-unit-proven/volume': {
    severity: 'note',
    message: ({ value, unit, by }: { value: number; unit: string; by: 'floor area' | 'envelope area' }) =>
      `No unit is stated for the volume ${value}. It is read in ${unit}, because no other unit fits the ${by}.`,
  },
  'log-unit-likely/temperature': {
    severity: 'note',
    message: ({
      value,
      indoors,
      unit,
      other,
    }: {
      value: number
      indoors: boolean
      unit: '°C' | '°F'
      other: '°C' | '°F'
    }) =>
      indoors
        ? `No unit is stated for the indoor temperature. It was read as ${logged(value)} ${unit}, because ${logged(value)} ${other} is unlikely in a room.`
        : `No unit is stated for the outdoor temperature. It was read as ${logged(value)} ${unit}, like the indoor one.`,
  },
  'log-sea-level': {
    severity: 'caution',
    message: 'The barometric pressure is reduced to sea level. It was used as the pressure at the site.',
    remedy: 'Enter the altitude of the site, or the barometric pressure measured there.',
  },
  'log-sea-level/left-out': {
    severity: 'caution',
    message:
      'The barometric pressure is reduced to sea level, so it was not used. The standard pressure at the altitude of the site was used instead.',
    remedy: 'Enter the barometric pressure measured at the site, if you have it.',
  },
  'log-unit-likely/barometer': {
    severity: 'note',
    message: ({ value, unit }: { value: number; unit: string }) =>
      `No unit is stated for the barometric pressure. It was read as ${value} ${unit}, the only unit in which it is possible.`,
  },
  'log-unit-likely/humidity': {
    severity: 'note',
    message: ({ value, share }: { value: number; share: boolean }) =>
      `No unit is stated for the humidity ${value}. It was read as ${share ? 'a fraction' : 'a percentage'}.`,
  },
  'log-several-values': {
    severity: 'caution',
    message: ({ field }: { field: string }) =>
      `The log has more than one value for the ${field}. The first was used.`,
    remedy: 'Check which one is right.',
  },
  'log-mean-of-two': {
    severity: 'note',
    message: 'The log has two values (before and after, or one for each run). Their mean was used.',
  },
  'log-mean-of-readings': {
    severity: 'note',
    message: 'The log has one value for each reading. Their mean was used.',
  },
  'log-temperature-of-readings': {
    severity: 'note',
    message: ({ side, mean }: { side: 'indoor' | 'outdoor'; mean: string }) =>
      `The log also has an ${side} temperature for each reading, ${mean} on average. The one stated for the test was used.`,
  },
  'log-parts-of-area': {
    severity: 'caution',
    message: ({ field }: { field: string }) =>
      `The log has areas of parts of the building, but no total. The ${field} was left open.`,
    remedy: 'Enter the area of the whole building.',
  },
  'log-result-confirmed': {
    severity: 'note',
    message: ({ label, logged: own, read }: { label: string; logged: string; read: string }) =>
      `The log's own ${quoted(label)} is ${own}. The readings give ${read}.`,
  },
  'log-result-differs': {
    severity: 'caution',
    message: ({
      label,
      logged: own,
      read,
      off,
    }: {
      label: string
      logged: string
      read: string
      off: number
    }) =>
      `The log's own ${quoted(label)} is ${own}, but the readings give ${read} (${off > 0 ? '+' : '−'}${Math.abs(100 * off).toFixed(0)} %).`,
    remedy:
      'Check the volume, the units and the columns that were read, then how the log calculates its result.',
  },
} as const satisfies RemarkTexts

export const fieldText = saying(fieldTexts)
