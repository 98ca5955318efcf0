import type { Evaluation, Figure, TestRecord } from '@draughtbook/shared-calc'
import { dayInWords, methodById, reportedResults, unitText } from '@draughtbook/shared-calc'
import { findingsText } from './findings-text.js'
import { numberText } from './number-text.js'
import { verdictLines } from './verdict-text.js'

/** The evaluation in plain words: what was tested, verdict, margin, ageing, leakage still to seal, results, findings. */
export function evaluationText(record: TestRecord, evaluation: Evaluation): string {
  return [
    headline(record, evaluation),
    '',
    ...verdictLines(evaluation).map(({ label, text }, i, lines) =>
      labelled(label)(text, lines[i - 1]?.label === label ? 1 : 0),
    ),
    '',
    ...resultLines(evaluation).map(labelled('Result')),
    '',
    findingsText(evaluation.findings, record),
  ].join('\n')
}

const WIDTH = 11

/** The label is on the first line of a group only. */
export const labelled =
  (label: string) =>
  (text: string, index: number): string =>
    `${(index === 0 ? label : '').padEnd(WIDTH)}${text}`

function headline({ building, test }: TestRecord, { method, runs }: Evaluation): string {
  const directions = runs.map(({ direction }) => direction).join(' and ')
  const parts = [
    building.name,
    building.site,
    test.stage,
    dayInWords(test.date),
    methodById(method).title,
    directions,
  ]
  return parts.filter(Boolean).join(' · ')
}

function resultLines({ results, runs, method, official }: Evaluation): string[] {
  const { terms } = methodById(method)
  const shown = reportedResults.flatMap(({ key, name }) => {
    const figure = results[key]
    return figure ? [`${terms[key as keyof typeof terms] ?? name}: ${figureText(figure)}`] : []
  })
  const exponents = runs.map(
    ({ direction, airFlowExponent, rSquared }) =>
      `${direction}: air flow exponent ${figureText(airFlowExponent)}${rSquared === undefined ? '' : `, r² ${numberText(rSquared, 5)}`}`,
  )
  const own = (official ?? []).map(({ term, direction, value, unit, customary }) => {
    const other = customary ? ` = ${numberText(customary.value)} ${unitText(customary.unit)}` : ''
    return `${term}${direction ? `, ${direction}` : ''}: ${figureText({ value, unit })}${other}`
  })
  return [...shown, ...exponents, ...own]
}

export function figureText({ value, unit, ci95 }: Figure): string {
  const range = ci95
    ? ` (95 % interval, fit scatter only: ${numberText(ci95[0])} to ${numberText(ci95[1])})`
    : ''
  return `${numberText(value)}${unitText(unit) && ` ${unitText(unit)}`}${range}`
}
