import { citing, practiceSource } from '../../catalogue/sources.js'
import { type Finding, RECORD_FORMAT_2, type TestRecord } from '../../contract/record/index.js'
import type { Rule } from '../../evaluation/rules/rule.js'
import { preparationList } from './asks.js'
import { allCautions, cautionTexts } from './cautions.js'
import { checkPreparation } from './check.js'

/** The rules of this file came with record@2: a record@1 is judged as it was when it was archived. */
const asks = ({ format }: TestRecord): boolean => format === RECORD_FORMAT_2

/** An opening is in another state than the preparation method asks. */
export const preparationDeparts: Rule = ({ record }) => {
  if (!asks(record)) return []
  return checkPreparation(record).flatMap(({ kind, asked, found }) => {
    const listed = preparationList.find((one) => one.kind === kind)
    return found
      .filter(({ agrees }) => !agrees)
      .map(
        ({ opening, index }): Finding => ({
          rule: 'preparation-departs',
          severity: 'caution',
          message: `"${opening.opening}" was ${opening.state}; ${record.test.preparation ?? ''} asks: ${asked}`,
          ...citing(listed?.source ?? practiceSource),
          where: [`test.openings[${index}].state`],
          remedy: 'put it right and test again, or say in the report why it departs from the method',
        }),
      )
  })
}

/** An opening of the list has no state. */
export const preparationBlank: Rule = ({ record }) => {
  if (!asks(record)) return []
  const blank = checkPreparation(record).filter(({ found }) => found.length === 0)
  if (blank.length === 0) return []
  return [
    {
      rule: 'preparation-blank',
      severity: 'note',
      message: `no state was logged for: ${blank.map(({ kind }) => kind).join(', ')}`,
      ...citing({ text: 'ISO 9972:2015, 5.2', seen: 'memory' }),
      where: ['test.openings'],
      remedy: 'log the state of each, or "not present"',
    },
  ]
}

/** Method 3 is a test for a stated purpose. */
export const preparationPurpose: Rule = ({ record }) => {
  const { preparation, purpose } = record.test
  if (!asks(record) || preparation !== 'method 3' || purpose !== undefined) return []
  return [
    {
      rule: 'preparation-purpose',
      severity: 'caution',
      message: 'method 3 prepares the building for a purpose; the purpose was not logged',
      ...citing({ text: 'ISO 9972:2015, 5.2', seen: 'memory' }),
      where: ['test.purpose'],
      remedy: 'say which code or purpose asked for the preparation',
    },
  ]
}

/** A caution that nobody has acknowledged. */
export const cautionsUnanswered: Rule = ({ record }) => {
  if (!asks(record)) return []
  const answered = new Set((record.preparation?.cautions ?? []).map(({ caution }) => caution))
  const open = allCautions.filter((caution) => !answered.has(caution))
  if (open.length === 0) return []
  return [
    {
      rule: 'caution-unanswered',
      severity: 'caution',
      message: `not acknowledged by the tester: ${open.join(', ')}`,
      ...citing(practiceSource),
      where: ['preparation.cautions'],
      remedy: `look before the fan is switched on. ${open.map((caution) => cautionTexts[caution]).join(' ')} Local codes and licensed practice decide.`,
    },
  ]
}

/** Said not to apply, though the openings say otherwise. */
export const cautionContradicted: Rule = ({ record }) => {
  if (!asks(record)) return []
  const at = (record.preparation?.cautions ?? []).findIndex(
    ({ caution, answer }) => caution === 'fuel-burning appliances' && answer === 'does not apply',
  )
  if (at < 0) return []
  const flues = checkPreparation(record).find(({ kind }) => kind === 'flues and fireplaces')
  const present = flues?.found.filter(({ opening }) => opening.state !== 'not present') ?? []
  return present.map(
    ({ opening, index }): Finding => ({
      rule: 'caution-contradicted',
      severity: 'caution',
      message: `fuel-burning appliances are said not to apply, but "${opening.opening}" is there`,
      ...citing(practiceSource),
      where: [`preparation.cautions[${at}].answer`, `test.openings[${index}]`],
      remedy: cautionTexts['fuel-burning appliances'],
    }),
  )
}
