import { describe, expect, it } from 'vitest'
import { cited, citing, practiceSource } from '../../../shared-calc/src/catalogue/sources.js'

describe('the source printed behind a finding', () => {
  const practice = citing(practiceSource)

  it('is common practice only where the finding has a figure that could have a source', () => {
    expect(cited({ ...practice, limit: 100 })).toBe('common practice, no source')
    expect(cited({ ...practice, value: 0.5 })).toBe('common practice, no source')
    expect(cited(practice)).toBe('')
  })

  it('is a clause in any case, marked where nobody has read it', () => {
    expect(cited(citing({ text: 'ISO 9972:2015, 5.2', seen: 'memory' }))).toBe(
      'ISO 9972:2015, 5.2, value from memory',
    )
    expect(cited(citing({ text: 'Roulet 2008, p. 148', seen: 'read' }))).toBe('Roulet 2008, p. 148')
  })
})
