import { finding } from '../../catalogue/findings/finding.js'
import { practiceSource } from '../../catalogue/sources.js'
import { RECORD_FORMAT, type TestRecord } from '../../contract/record/index.js'
import type { Rule } from '../../evaluation/rules/rule.js'
import { preparationList } from './asks.js'
import { allCautions, cautionName, cautionTexts } from './cautions.js'
import { checkPreparation } from './check.js'

/** The rules of this file came with record@2: a record@1 is judged as it was when it was archived. */
const asks = ({ format }: TestRecord): boolean => format !== RECORD_FORMAT

/** An opening is in another state than the preparation method requires. */
export const preparationDeparts: Rule = ({ record }) => {
  const { preparation: method } = record.test
  if (!asks(record) || method === undefined) return []
  return checkPreparation(record).flatMap(({ kind, asked, found }) => {
    const source = preparationList.find((one) => one.kind === kind)?.source ?? practiceSource
    return found
      .filter(({ agrees }) => !agrees)
      .map(({ opening: { opening, state }, index }) =>
        finding(
          'preparation-departs',
          { where: [`test.openings[${index}].state`], source },
          { opening, state, method, asked },
        ),
      )
  })
}

/** An opening of the list has no state. */
export const preparationBlank: Rule = ({ record }) => {
  if (!asks(record)) return []
  const blank = checkPreparation(record).filter(({ found }) => found.length === 0)
  if (blank.length === 0) return []
  return [
    finding('preparation-blank', { where: ['test.openings'] }, { kinds: blank.map(({ kind }) => kind) }),
  ]
}

/** Method 3 is a test for a stated purpose. */
export const preparationPurpose: Rule = ({ record }) => {
  const { preparation, purpose } = record.test
  if (!asks(record) || preparation !== 'method 3' || purpose !== undefined) return []
  return [finding('preparation-purpose', { where: ['test.purpose'] })]
}

/** A caution that nobody has acknowledged. */
export const cautionsUnanswered: Rule = ({ record }) => {
  if (!asks(record)) return []
  const answered = new Set((record.preparation?.cautions ?? []).map(({ caution }) => caution))
  const cautions = allCautions.filter((caution) => !answered.has(caution))
  if (cautions.length === 0) return []
  const texts = cautions.map((caution) => cautionTexts[caution])
  return [
    finding(
      'caution-unanswered',
      { where: ['preparation.cautions'] },
      { cautions: cautions.map(cautionName), texts },
    ),
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
  return present.map(({ opening: { opening }, index }) =>
    finding(
      'caution-contradicted',
      { where: [`preparation.cautions[${at}].answer`, `test.openings[${index}]`] },
      { opening },
    ),
  )
}
