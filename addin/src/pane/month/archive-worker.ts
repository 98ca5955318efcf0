import { InputError, problemsInWords } from '@draughtbook/shared-calc'
import { isMissingPart, MISSING_PART } from '../missing-part.js'
import type { Answer, Answers, Asked } from './archive-messages.js'

/** The parts of the worker's own scope that are used; the DOM library names the window's instead. */
const scope = self as unknown as {
  onmessage: ((event: MessageEvent<{ number: number; asked: Asked }>) => void) | null
  postMessage(message: Answer): void
}

scope.onmessage = ({ data: { number, asked } }) => {
  void answer(asked).then(
    (value) => scope.postMessage({ number, value }),
    (error: unknown) => scope.postMessage({ number, fault: faultOf(error) }),
  )
}

const faultOf = (error: unknown): string =>
  error instanceof InputError
    ? problemsInWords(error.problems)
    : isMissingPart(error)
      ? MISSING_PART
      : String(error)

async function answer(asked: Asked): Promise<Answers[keyof Answers]> {
  if (asked.kind === 'layout') {
    const { parseLayout } = await import('@draughtbook/shared-calc/log')
    return parseLayout(parsed(asked.text))
  }
  if (asked.kind === 'rerun' || asked.kind === 'make-rerun' || asked.kind === 'write-rerun') {
    const rerun = await import('@draughtbook/shared-calc/rerun')
    if (asked.kind === 'rerun') {
      const { bytes, file, layouts, keys = [] } = asked
      return rerun.rerunFile(bytes, file, {
        layouts,
        ...(keys.length > 0 && { verify: rerun.signatureVerifier(keys) }),
      })
    }
    if (asked.kind === 'make-rerun') return rerun.makeRerunReport(asked.tests, asked.asOf)
    return rerun.writeRerunWorkbook(asked.report)
  }
  if (asked.kind === 'records') {
    const { recordsIn } = await import('../several/records-in.js')
    return recordsIn(asked.bytes, asked.file, asked.layouts)
  }
  if (asked.kind === 'make-building' || asked.kind === 'write-building') {
    const { makeBuilding, writeBuilding } = await import('../several/several-tests.js')
    return asked.kind === 'make-building' ? makeBuilding(asked) : writeBuilding(asked)
  }
  if (asked.kind === 'make-stages' || asked.kind === 'write-stages') {
    const { makeStages, writeStages } = await import('../several/several-tests.js')
    return asked.kind === 'make-stages' ? makeStages(asked) : writeStages(asked)
  }
  const register = await import('@draughtbook/shared-calc/register')
  if (asked.kind === 'read') return register.readLines(asked.bytes, asked.file, asked.layouts)
  if (asked.kind === 'write-register') return register.writeRegisterWorkbook(asked.register)
  const { read, others, asOf, month } = asked
  return register.makeRegister(
    read.flatMap(({ lines }) => lines),
    [...others, ...read.flatMap(({ leftOut }) => leftOut)],
    { asOf, ...(month === undefined ? {} : { month }) },
  )
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    throw new InputError([{ path: '', message: 'it is not valid JSON' }])
  }
}
