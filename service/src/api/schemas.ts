import {
  Evaluation,
  Finding,
  LeakReport,
  LibraryDevice,
  LibraryGauge,
  LibraryTarget,
  PlanRequest,
  PlanResult,
  TakeOffRequest,
  TakeOffResult,
  TestRecord,
  UnfinishedRequest,
  WhileReading,
} from '@draughtbook/shared-calc'
import { Layout, ReadingsAnswer, ReadingsRequest } from '@draughtbook/shared-calc/log'
import { z } from 'zod'
import { ProblemBody } from '../http/problem-body.js'

const text = z.string()
const list = (name: string, item: z.ZodType) => z.strictObject({ [name]: z.array(item) })

const EntryFault = z.strictObject({
  file: text,
  line: z.int().optional(),
  path: text,
  message: text,
  lastGood: z.boolean(),
})
const Entry = z.union([LibraryDevice, LibraryGauge, Layout, LibraryTarget])

/** Every schema the API mentions, by name. The same objects check what comes in. */
export const schemas: Readonly<Record<string, z.ZodType>> = {
  TestRecord,
  Evaluation,
  TakeOffRequest,
  TakeOffResult,
  PlanRequest,
  PlanResult,
  UnfinishedRequest,
  WhileReading,
  LeakReport,
  Finding,
  ReadingsRequest,
  ReadingsAnswer,
  Problem: ProblemBody,
  LibraryDevice,
  LibraryGauge,
  LibraryTarget,
  Layout,
  LibraryEntry: Entry,
  MethodList: list('methods', z.looseObject({ id: text, title: text })),
  TargetList: list('targets', z.looseObject({ id: text, label: text })),
  FormulaList: list(
    'formulas',
    z.strictObject({
      chapter: text,
      symbol: text,
      name: text,
      unit: text,
      expression: text,
      mathml: text,
      source: text,
      file: text,
    }),
  ),
  PreparationLists: z.strictObject({
    preparation: z.strictObject({
      openings: z.array(z.looseObject({ kind: text })),
      cautions: z.array(z.strictObject({ caution: text, text })),
      decides: text,
    }),
  }),
  LibrarySummary: z.strictObject({
    kinds: z.record(text, z.int()),
    faults: z.array(EntryFault),
  }),
  LibraryListing: z.strictObject({
    entries: z.array(z.strictObject({ id: text, version: text, value: Entry })),
    faults: z.array(EntryFault),
  }),
  LibrarySaved: z.strictObject({ id: text, version: text }),
  LibraryHistory: list('versions', z.strictObject({ version: text, saved: z.iso.datetime() })),
  Firm: z.strictObject({
    name: text.optional(),
    logo: z.base64().optional(),
    /** There is a library to ask. */
    library: z.literal(true).optional(),
    /** This access may change it. */
    changesLibrary: z.literal(true).optional(),
  }),
  Alive: z.strictObject({ status: z.literal('alive'), calculationVersion: text }),
  Readiness: z.strictObject({
    status: z.enum(['starting', 'ready', 'stopping']),
    waitingFor: z.array(z.string()).optional(),
  }),
}
